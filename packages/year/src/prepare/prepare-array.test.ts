import { changedDesign, loadSite } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { type PreparedArray, prepareArrays } from './prepare-array.js';
import { prepareOutdoors } from './prepare-outdoors.js';
import { PreparedCache } from './prepared-cache.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
const atNoon = (wm2: number) => always(0).map((_, h) => (h % 24 >= 9 && h % 24 < 15 ? wm2 : 0));
const parts = { ghiWm2: atNoon(500), dniWm2: atNoon(700), dhiWm2: atNoon(150), airC: always(10), windMs: always(2) };
const sky = weatherOf(parts);
const noon = 100 * 24 + 12;
const midnight = 100 * 24;
/** An array in the open without cable, dirt and mismatch, on a fixed mount. */
const plain = {
  skyline: [],
  'arrays.0.mount': { kind: 'fixed', tilt: 50, azimuth: 180 },
  'arrays.0.losses': { soiling: 0, mismatch: 0 },
  'arrays.0.cable': { length: '0 m', size: '10 mm2' },
};

const cache = new PreparedCache(100);
function arraysOf(changes: Record<string, unknown>, weather = sky): PreparedArray[] {
  const design = changedDesign(site, { ...plain, ...changes });
  return prepareArrays(design, weather, prepareOutdoors(design, weather, cache), [19, 33], cache);
}
const arrayOf = (changes: Record<string, unknown>, weather = sky) => arraysOf(changes, weather)[0]!;
const yearOf = (changes: Record<string, unknown>) => yearSum(arrayOf(changes).dc.powerW);

// Two in series and three strings of 32.5 V x 9.24 A.
test('an array is rated by its modules, and one without strings is left out', () => {
  expect(arrayOf({})).toMatchObject({ name: 'garden pole', maxCurrentA: 60, snowShare: null });
  expect(arrayOf({}).ratedW).toBeCloseTo(6 * 32.5 * 9.24, 9);
  expect(arraysOf({ 'arrays.0.strings': 0 })).toEqual([]);
});

// Faiman (2008): light over 25 + 6.84 x wind; by NOCT 45 degC: 25 K for 800 W/m2 of light.
test('cells are warm by light and wind, or by their NOCT where the site file says so', () => {
  const wind = arrayOf({});
  const light = wind.plane.planeWm2[noon]! - wind.plane.skylineLossWm2[noon]!;
  expect(wind.input.cellC[noon]! - 10).toBeCloseTo(light / (25 + 6.84 * 2), 6);
  const noct = arrayOf({ 'arrays.0.cellModel': 'noct' }).input.cellC[noon]!;
  expect(noct).not.toBeCloseTo(wind.input.cellC[noon]!, 1);
  const warmer = arrayOf({ 'arrays.0.cellModel': 'noct', 'arrays.0.module.noct': '50 degC' }).input.cellC[noon]!;
  expect((warmer - 10) / (noct - 10)).toBeCloseTo(30 / 25, 2);
});

test('dirt, mismatch and age each take their share', () => {
  const whole = yearOf({});
  const share = (losses: object) => yearOf({ 'arrays.0.losses': { soiling: 0, mismatch: 0, ...losses } }) / whole;
  expect(share({ mismatch: '4 %' })).toBeCloseTo(0.96, 6);
  // Half a percent a year, and more than all of it after three hundred years of one.
  expect(share({ age: '20 years' })).toBeCloseTo(0.9, 6);
  expect(share({ age: '20 years', ageing: '1 %' })).toBeCloseTo(0.8, 6);
  expect(share({ age: '100 years', ageing: '2 %' })).toBe(0);
  expect(share({ soiling: '10 %' })).toBeLessThan(0.92);
});

// 20 m out and back of 6 mm2 copper at some 20 degC: 0.0175 ohm mm2/m x 40 m / 6 mm2 = 0.117 ohm.
test('a cable takes the square of the current', () => {
  const cabled = arrayOf({ 'arrays.0.cable': { length: '20 m', size: '6 mm2' } });
  expect(cabled.input.cableOhm).toBeGreaterThan(0.11);
  expect(cabled.input.cableOhm).toBeLessThan(0.14);
  expect(cabled.dc.powerW[noon]).toBeLessThan(arrayOf({}).dc.powerW[noon]!);
  const longer = arrayOf({ 'arrays.0.cable': { length: '40 m', size: '6 mm2' } });
  expect(longer.input.cableOhm / cabled.input.cableOhm).toBeCloseTo(2, 6);
  // A cable in the heat has more resistance, 0.4 % for each of 30 K.
  const hot = arrayOf(
    { 'arrays.0.cable': { length: '20 m', size: '6 mm2' } },
    weatherOf({ ...parts, airC: always(40) }),
  );
  expect(hot.input.cableOhm / cabled.input.cableOhm).toBeCloseTo(1.12, 1);
});

test('snow on the plane is snow on the cells', () => {
  const snowDepthM = always(0).map((_, h) => (h < 1000 ? Math.floor(h / 100) / 10 : 0));
  const snowy = arrayOf({}, weatherOf({ ...parts, airC: always(-5), snowDepthM }));
  expect(snowy.input.snowShare).toBe(snowy.snowShare);
  expect(arrayOf({}).input).not.toHaveProperty('snowShare');
});

test('a controller draws its own power in the dark, on top of a drive', () => {
  const still = arrayOf({});
  expect([still.ownUseW[midnight], still.ownUseW[noon]]).toEqual([2, 0]);
  const mount = { kind: 'two-axis', drive: '60 W' };
  const tracking = arrayOf({ 'arrays.0.mount': mount });
  expect(tracking.ownUseW[midnight]).toBeGreaterThanOrEqual(2);
  expect(tracking.ownUseW[noon]).toBeGreaterThan(0);
  const undrawn = arrayOf({ 'arrays.0.mount': mount, 'arrays.0.controller.nightDraw': '0 W' });
  expect(yearSum(tracking.ownUseW)).toBeGreaterThan(yearSum(undrawn.ownUseW) + 2 * 8 * 365);
});

test('a direct controller without a limit has none', () => {
  const direct = arrayOf({ 'arrays.0.controller': { kind: 'direct' }, 'arrays.0.inSeries': 1 });
  expect(direct.maxCurrentA).toBe(Number.POSITIVE_INFINITY);
  expect(direct.controller.direct).toBe(true);
  expect(arrayOf({}).controller.direct).toBe(false);
});
