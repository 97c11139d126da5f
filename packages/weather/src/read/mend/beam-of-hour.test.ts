import { splitGlobal } from '@wintergap/irradiance';
import { expect, test } from 'vitest';
import { pond } from '../../check/clear-year.fixture.js';
import { sunOf } from '../../sun-of-place.js';
import { beamOnHorizontalWm2, closingBeamWm2 } from './beam-of-hour.js';

const sun = sunOf(pond);
const noon = 172 * 24 + 12;
const sunrise = sun.upShare.findIndex((up, h) => up === 0.75 && sun.meanCosZenith[h]! > 0.045);

test('in a full hour beam and horizontal beam are one another times the cosine', () => {
  const onHorizontal = beamOnHorizontalWm2(700, sun, noon);
  expect(onHorizontal).toBeCloseTo(700 * sun.meanCosZenith[noon]!, 9);
  expect(closingBeamWm2(onHorizontal, sun, noon)).toBeCloseTo(700, 9);
});

test('in the hour of sunrise the mean over the hour becomes that of its sunlit part', () => {
  expect(sunrise).toBeGreaterThan(0);
  expect(closingBeamWm2(beamOnHorizontalWm2(150, sun, sunrise), sun, sunrise)).toBeCloseTo(200, 9);
});

test('no beam from a sun that is down or within 3 degrees of the horizon, none above the extraterrestrial', () => {
  expect([closingBeamWm2(50, sun, 0), beamOnHorizontalWm2(50, sun, 0)]).toEqual([0, 0]);
  const low = sun.upShare.findIndex((up, h) => up === 1 && sun.meanCosZenith[h]! < 0.05);
  expect(closingBeamWm2(10, sun, low === -1 ? sun.upShare.indexOf(0.25) : low)).toBe(0);
  expect(closingBeamWm2(5000, sun, noon)).toBe(sun.extraterrestrialNormalWm2[noon]);
  expect(closingBeamWm2(-5, sun, noon)).toBe(0);
});

test('the beam that closes a split hour is the beam of the split', () => {
  const ghi = sun.meanCosZenith.map((cos) => 700 * cos);
  const { dniWm2, dhiWm2 } = splitGlobal(ghi, sun);
  let compared = 0;
  for (let h = 0; h < 8760; h++) {
    if (dniWm2[h] === 0) continue;
    expect(closingBeamWm2(ghi[h]! - dhiWm2[h]!, sun, h)).toBeCloseTo(dniWm2[h]!, 6);
    compared++;
  }
  expect(compared).toBeGreaterThan(3500);
});
