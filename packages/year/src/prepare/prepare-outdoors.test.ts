import { changedDesign, loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { prepareOutdoors, snowFrom } from './prepare-outdoors.js';
import { PreparedCache } from './prepared-cache.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
/** Six days on which snow falls in January and in December, none between. */
const days = { snow: { days: [6, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 6] } };
const cold = { airC: always(-8) };

test('snow comes from the depths of the weather, then from its precipitation, then from the days on which it falls', () => {
  const withDays = changedDesign(site, days);
  const depth = { snowDepthM: always(0.3) };
  const rain = { precipitationMm: always(0.1) };
  expect(snowFrom(withDays, weatherOf({ ...cold, ...depth, ...rain }))).toBe('depth');
  expect(snowFrom(withDays, weatherOf({ ...cold, ...rain }))).toBe('precipitation');
  expect(snowFrom(withDays, weatherOf(cold))).toBe('snow.days');
  expect(snowFrom(site.base, weatherOf(cold))).toBeNull();
});

test('the ground is as bright as is written, and as its snow where that lies', () => {
  const outdoors = (parts: object, changes = {}) =>
    prepareOutdoors(changedDesign(site, changes), weatherOf({ ...cold, ...parts }), new PreparedCache());
  const bare = outdoors({});
  expect([bare.snowDepthM, bare.albedo[0]]).toEqual([null, 0.2]);
  const snowy = outdoors({ snowDepthM: always(0.3) });
  expect([snowy.snowDepthM![0], snowy.albedo[0]]).toEqual([0.3, 0.65]);
  const byDays = outdoors({}, days);
  expect(Math.max(...byDays.snowDepthM!)).toBeGreaterThan(0.05);
  expect(Math.max(...byDays.albedo)).toBeCloseTo(0.65, 9);
  expect(outdoors({ albedo: always(0.31) }).albedo[0]).toBe(0.31);
});

// 21 March at the site's meridian: the sun is up for half of the day, around noon of its clock.
test('the sun is that of the place and its clock', () => {
  const { sun } = prepareOutdoors(site.base, weatherOf(), new PreparedCache());
  const up = sun.upShare.subarray(79 * 24, 80 * 24);
  expect(up.reduce((sum, share) => sum + share, 0)).toBeCloseTo(12.1, 0);
  const middle =
    up.reduce((sum, share, hour) => sum + share * (hour + 0.5), 0) / up.reduce((sum, share) => sum + share, 0);
  // 92.2 degrees west of a clock of 90 degrees: nine minutes late, and seven more in March.
  expect(middle).toBeCloseTo(12 + (9 + 7) / 60, 1);
});
