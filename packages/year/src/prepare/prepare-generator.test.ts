import { changedDesign, loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { prepareGenerator } from './prepare-generator.js';
import { PreparedCache } from './prepared-cache.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
/** The engine of a site file some of whose values are changed. */
const engineOf = (changes: Record<string, unknown>, weather = weatherOf()) =>
  prepareGenerator(changedDesign(site, { 'place.elevation': '0 m', ...changes }), weather, new PreparedCache())!;
const noonOf = (day: number) => day * 24 + 12;

// A DC set loses 10 % on the way to the bus and warms up for three minutes, unless written.
test('the engine of the site file is that of the loop', () => {
  const engine = engineOf({ 'generator.derate': false });
  expect(engine).toMatchObject({ bus: 'dc', chargerEfficiency: 1, stopAbove: 0.8, stopAtBulkEnd: false });
  expect(engine).toMatchObject({ fullEveryDays: 0, minimumRunH: 0, warmUpH: 0.05, exerciseEveryH: 0, startBelowV: 0 });
  expect([engine.startFailure.chance, engine.minimumLoadW]).toEqual([0, 0]);
  expect(engine.ratedW[noonOf(10)]).toBeCloseTo(2700, 9);
  expect(engine.fuelIdleLPerH).toBe(0.5);
  expect(engine.fuelLPerWh).toBeCloseTo(1.1 / 2700, 12);
  expect(engine.startBelow[noonOf(10)]).toBe(0.45);
  expect([7, 8, 19, 20].map((hour) => engine.startAllowed[hour])).toEqual([0, 1, 1, 0]);
});

test('an AC set has the charger that is written', () => {
  const output = { bus: 'ac', power: '2 kW', charger: { power: '1 kW', efficiency: '85 %' } };
  const engine = engineOf({ 'generator.output': output });
  expect(engine).toMatchObject({ bus: 'ac', chargerW: 1000, chargerEfficiency: 0.85 });
});

test('an efficiency that is written is taken off', () => {
  const { ratedW } = engineOf({ 'generator.output.efficiency': '80 %', 'generator.derate': false });
  expect(ratedW[0]).toBeCloseTo(2400, 9);
});

test('thin air takes power unless the site file says that it does not', () => {
  const high = { 'place.elevation': '2500 m' };
  expect(engineOf(high).ratedW[0]).toBeLessThan(2400);
  expect(engineOf({ ...high, 'generator.derate': false }).ratedW[0]).toBe(2700);
});

test('times are minutes and hours of the loop', () => {
  const engine = engineOf({
    'generator.minimumRun': '2 h',
    'generator.warmUp': '6 min',
    'generator.coolDown': '3 min',
    'generator.stop.fullEvery': 21,
    'generator.stop.atBulkEnd': true,
  });
  expect(engine).toMatchObject({
    minimumRunH: 2,
    warmUpH: 0.1,
    coolDownH: 0.05,
    fullEveryDays: 21,
    stopAtBulkEnd: true,
  });
});

test('a stop by the bulk charge alone is no stop by charge', () => {
  expect(engineOf({ 'generator.stop': { atBulkEnd: true } })).toMatchObject({ stopAbove: 1, stopAtBulkEnd: true });
});

test('exercise runs and starts that fail are those of the site file', () => {
  const engine = engineOf({
    'generator.exercise': { every: 30, lasts: '15 min', at: 10 },
    'generator.failsToStart': { chance: '30 %', seed: 5, retryAfter: '7 h' },
  });
  expect(engine).toMatchObject({ exerciseEveryH: 720, exerciseH: 0.25, retryAfterH: 7 });
  expect(engine.startFailure).toEqual({ chance: 0.3, seed: 5, retryAfterH: 7 });
  expect(engine.exerciseAt[29 * 24 + 10]).toBe(1);
});

test('a least load is a share of what reaches the bus', () => {
  expect(engineOf({ 'generator.minimumLoad': '40 %' }).minimumLoadW).toBeCloseTo(0.4 * 2700, 9);
});

test('a voltage that holds for some minutes starts it, without any charge', () => {
  const engine = engineOf({ 'generator.start': { voltageBelow: '23.5 V', heldFor: '6 min' } });
  expect(engine).toMatchObject({ startBelowV: 23.5, startBelowVForH: 0.1 });
  expect(Math.max(...engine.startBelow)).toBe(0);
});

test('who starts it by hand looks at hours of the day', () => {
  const engine = engineOf({ 'generator.start': { byHand: { below: '60 %', at: [9] } } });
  expect([8, 9, 10].map((hour) => engine.startBelow[hour])).toEqual([0, 0.6, 0]);
});

// 100 W/m2 around the clock are 2.4 kWh/m2 a day; day 51 has none.
test('a dull day is seen the day before', () => {
  const ghiWm2 = always(100).map((w, h) => (h >= 51 * 24 && h < 52 * 24 ? 0 : w));
  const beforeDullDay = { below: '75 %', dullBelow: '1 kWh/m2', forecast: 'perfect', at: [12] };
  const engine = engineOf({ 'generator.start': { beforeDullDay } }, weatherOf({ ghiWm2 }));
  expect([49, 50, 51].map((day) => engine.startBelow[noonOf(day)])).toEqual([0, 0.75, 0]);
  expect(engine.startBelow[noonOf(50) + 1]).toBe(0);
});

// 1 January 2025 was a Wednesday.
test('weekdays and months are those in which somebody is there', () => {
  const allowed = (start: object, days: number[]) => {
    const { startAllowed } = engineOf({ 'generator.start': { below: '45 %', ...start } });
    return days.map((day) => startAllowed[noonOf(day)]);
  };
  const week = [0, 1, 2, 3, 4, 5, 6];
  expect(allowed({}, week)).toEqual([1, 1, 1, 1, 1, 1, 1]);
  expect(allowed({ days: 'weekdays' }, week)).toEqual([1, 1, 1, 0, 0, 1, 1]);
  expect(allowed({ days: 'weekends' }, week)).toEqual([0, 0, 0, 1, 1, 0, 0]);
  expect(allowed({ months: [2] }, [30, 31, 58, 59])).toEqual([0, 1, 1, 0]);
});

test('a run may go on past the hours of its start where the site file says so', () => {
  const midnight = (endsRun: boolean) =>
    engineOf({ 'generator.start': { below: '45 %', between: [8, 20], endsRun } }).runAllowed[0];
  expect([midnight(true), midnight(false)]).toEqual([0, 1]);
});

test('a place without an engine has none', () => {
  const { generator: _, ...without } = site.base;
  expect(prepareGenerator(without as never, weatherOf(), new PreparedCache())).toBeNull();
});
