import { changedDesign, loadSite, type Site } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { prepareOutdoors } from './prepare-outdoors.js';
import { preparePlane } from './prepare-plane.js';
import { PreparedCache } from './prepared-cache.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
/** An even sky around noon of every day, and a foot of snow in the cold if it is asked for. */
const atNoon = (wm2: number) => always(0).map((_, h) => (h % 24 >= 9 && h % 24 < 15 ? wm2 : 0));
const skyParts = { ghiWm2: atNoon(500), dniWm2: atNoon(700), dhiWm2: atNoon(150) };
const sky = weatherOf(skyParts);
const fixed = { kind: 'fixed', tilt: 50, azimuth: 180 };
const open = { skyline: [], 'arrays.0.mount': fixed };

/** One cache for all: a plane that does not depend on a change is found again. */
const cache = new PreparedCache(100);
const planeOf = (changes: Record<string, unknown>, weather = sky, design: Site = changedDesign(site, changes)) =>
  preparePlane(design, 0, weather, prepareOutdoors(design, weather, cache), cache);
const lossOf = (changes: Record<string, unknown>) => yearSum(planeOf(changes).plane.skylineLossWm2);

test('in the open nothing is lost to obstacles, and what is there takes more from an array that stands low', () => {
  expect(lossOf(open)).toBe(0);
  const wall = { skyline: [{ from: 90, to: 270, top: '20 m', distance: '40 m' }], 'arrays.0.mount': fixed };
  const [low, high] = ['0 m', '12 m'].map((height) => lossOf({ ...wall, 'arrays.0.height': height }));
  expect(low).toBeGreaterThan(1.5 * high!);
  expect(high).toBeGreaterThan(0);
});

test('hills of the horizon take light whatever the height of the array', () => {
  const hills = {
    ...open,
    horizon: [
      { azimuth: 90, elevation: 25 },
      { azimuth: 270, elevation: 25 },
    ],
  };
  const [low, high] = ['0 m', '12 m'].map((height) => lossOf({ ...hills, 'arrays.0.height': height }));
  expect(low).toBeGreaterThan(0);
  expect(high).toBe(low);
});

// The leaves of the example stand from mid-May to mid-October unless written.
test('trees that are bare let through what is written', () => {
  const trees = (changes: object) => ({
    'arrays.0.mount': fixed,
    skyline: [{ from: 90, to: 270, top: '30 m', distance: '30 m', clear: { leafOn: '0 %', leafOff: '80 %' } }],
    ...changes,
  });
  const usual = lossOf(trees({}));
  const never = lossOf(trees({ leaves: { on: '07-01', off: '07-02' } }));
  const always = lossOf(trees({ leaves: { on: '01-01', off: '12-31' } }));
  expect(never).toBeLessThan(0.8 * usual);
  expect(usual).toBeLessThan(0.8 * always);
});

test('an array whose glass is left out gets all the light that falls on it', () => {
  const behind = planeOf(open).plane;
  const without = planeOf({ ...open, 'arrays.0.losses.glass': false }).plane;
  expect(yearSum(behind.glassLossWm2)).toBeGreaterThan(0);
  expect(yearSum(without.glassLossWm2)).toBe(0);
  expect(without.glassLossWm2).toHaveLength(8760);
  const noon = 100 * 24 + 12;
  expect(without.effectiveWm2[noon]).toBeCloseTo(behind.effectiveWm2[noon]! + behind.glassLossWm2[noon]!, 9);
  expect(yearSum(without.effectiveWm2)).toBeCloseTo(yearSum(without.planeWm2), 3);
});

test('snow covers a plane where there is some, as long as it is not left out, and slides from steep ones', () => {
  const snowy = weatherOf({
    ...skyParts,
    airC: always(-5),
    snowDepthM: always(0).map((_, h) => (h < 1000 ? Math.floor(h / 100) / 10 : 0)),
  });
  const covered = (snow: object, tilt = 30) => {
    const share = planeOf({ ...open, 'arrays.0.mount': { ...fixed, tilt }, snow }, snowy).snowShare;
    return share === null ? null : yearSum(share);
  };
  expect(planeOf(open).snowShare).toBeNull();
  expect(covered({ cover: 'none' })).toBeNull();
  const usual = covered({})!;
  expect(usual).toBeGreaterThan(0);
  expect(covered({ wholeUpTo: 5, bareFrom: 20 }, 30)).toBe(0);
  expect(covered({ cover: 'full' }, 70)!).toBeGreaterThan(covered({ wholeUpTo: 40, bareFrom: 65 }, 70)!);
  expect(covered({ clearing: { within: '2 h' } })!).toBeLessThan(usual);
});

test('a motor draws, a fixed mount does not', () => {
  expect(planeOf(open).driveW).toBeNull();
  const driven = planeOf({ skyline: [], 'arrays.0.mount': { kind: 'two-axis', drive: '60 W' } }).driveW!;
  expect(yearSum(driven)).toBeGreaterThan(0);
});

test('a mount that gives way to wind is another in other wind, any other is the same', () => {
  const windy = weatherOf({ ...skyParts, windMs: always(30) });
  const tracker = (stow: object) => ({ skyline: [], 'arrays.0.mount': { kind: 'two-axis', ...stow } });
  const stowing = tracker({ stowAbove: '15 m/s' });
  const sums = (changes: Record<string, unknown>) =>
    [sky, windy].map((weather) => yearSum(planeOf(changes, weather).plane.planeWm2));
  const [calm, stowed] = sums(stowing);
  expect(stowed).toBeLessThan(0.95 * calm!);
  expect(new Set(sums(tracker({}))).size).toBe(1);
});

// An overcast sky on a plane at 90 degrees: half of the dome by any model that calls it even, and half of what the ground throws back.
test('the ground and the model of the sky are those of the site', () => {
  const overcast = weatherOf({ ghiWm2: atNoon(200), dhiWm2: atNoon(200) });
  const upright = { skyline: [], 'arrays.0.mount': { ...fixed, tilt: 90 }, 'arrays.0.losses.glass': false };
  const noon = 100 * 24 + 12;
  const at = (albedo: number, more: object) =>
    planeOf({ ...upright, 'ground.albedo': albedo, ...more }, overcast).plane.planeWm2[noon]!;
  expect(at(0.6, {}) - at(0.2, {})).toBeCloseTo(0.4 * 200 * 0.5, 6);
  expect(at(0, { sky: 'isotropic' })).toBeCloseTo(100, 6);
});
