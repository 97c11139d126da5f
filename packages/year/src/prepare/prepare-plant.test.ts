import { changedDesign, loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { preparePlant } from './prepare-plant.js';
import { PreparedCache } from './prepared-cache.js';
import { exceededLimits, limitsUnder } from './site-limits.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
const cache = new PreparedCache(100);
const noLight = weatherOf();
const plantOf = (changes: Record<string, unknown>, weather = noLight) =>
  preparePlant(changedDesign(site, changes), { weather, measured: null }, cache).plant;

test('every part of the site file has its place in the plant', () => {
  const plant = plantOf({});
  expect(plant.sources.map(({ name, maxCurrentA }) => [name, maxCurrentA])).toEqual([['garden pole', 60]]);
  expect(plant).toMatchObject({ inverterLimitW: 4000, heater: null });
  expect(plant.bank.refAh).toBe(1000);
  expect(plant.generator!.bus).toBe('dc');
  expect(plant.aroundC).toBe(noLight.airC);
  expect(plant.ownUseW[0]).toBe(2);
});

test('without an inverter none carries AC', () => {
  const { inverter: _, ...without } = changedDesign(site, {});
  const { plant } = preparePlant(without as never, { weather: noLight, measured: null }, cache);
  expect([plant.inverter, plant.inverterLimitW]).toEqual([null, 0]);
});

test('what the arrays draw for themselves is added up', () => {
  const [array] = site.base.arrays;
  const two = { ...site.base, arrays: [array!, { ...array!, name: 'roof' }] };
  const { plant, arrays } = preparePlant(two, { weather: noLight, measured: null }, cache);
  expect(arrays).toHaveLength(2);
  expect(plant.ownUseW[0]).toBe(4);
});

/** Code -> level of the electrical checks. */
const limitsOf = (changes: Record<string, unknown>, weather = noLight) => {
  const design = changedDesign(site, changes);
  const { bank } = preparePlant(design, { weather, measured: null }, cache).plant;
  return limitsUnder(design, weather, bank, cache);
};
const checkOf = (code: string, changes: Record<string, unknown>, weather = noLight) =>
  limitsOf(changes, weather).find((limit) => limit.code === code)?.value;

// 2 x 39.9 V at 25 degC, 0.31 % more for each kelvin below: at -35 degC 94.6 V by the sheet.
test('the voltage in the cold is that of the record low, or of the coldest hour if that is colder', () => {
  const coldHour = weatherOf({ airC: always(10).map((airC, h) => (h === 500 ? -35 : airC)) });
  const atRecord = checkOf('cold-voltage', { 'place.recordLow': '-35 degC' })!;
  expect(atRecord).toBeGreaterThan(93);
  expect(atRecord).toBeLessThan(97);
  expect(checkOf('cold-voltage', { 'place.recordLow': '-20 degC' }, coldHour)).toBe(atRecord);
  expect(checkOf('cold-voltage', {}, coldHour)).toBe(atRecord);
  expect(checkOf('cold-voltage', { 'place.recordLow': '-50 degC' }, coldHour)!).toBeGreaterThan(atRecord);
});

test('limits that are exceeded are told apart, each with its array', () => {
  const limits = limitsOf({ 'arrays.0.inSeries': 4 });
  const exceeded = exceededLimits(limits);
  expect(exceeded.map(({ code, array }) => [code, array])).toContainEqual(['cold-voltage', 'garden pole']);
  expect(exceeded.length).toBeLessThan(limits.length);
  expect(exceededLimits(limitsOf({}))).toEqual([]);
});

test('an array without strings has no limits, and one without a cable none of its conductors', () => {
  expect(limitsOf({ 'arrays.0.strings': 0 })).toEqual([]);
  const ofCable = (changes: Record<string, unknown>) =>
    limitsOf(changes).filter(({ code }) => code === 'conductor-current' || code === 'voltage-drop').length;
  expect(ofCable({})).toBe(2);
  const { cable: _, ...bare } = site.base.arrays[0]!;
  const design = { ...site.base, arrays: [bare] };
  const { bank } = plantOf({});
  const limits = limitsUnder(design as never, noLight, bank, cache);
  expect(limits.length).toBeGreaterThan(3);
  expect(limits.filter(({ code }) => code === 'conductor-current' || code === 'voltage-drop')).toEqual([]);
});

// A cable twice as long loses twice as much.
test('the drop along the cable goes by its length and size', () => {
  const drop = (length: string, size: string) => checkOf('voltage-drop', { 'arrays.0.cable': { length, size } })!;
  expect(drop('50 m', '16 mm2') / drop('25 m', '16 mm2')).toBeCloseTo(2, 6);
  expect(drop('25 m', '8 mm2') / drop('25 m', '16 mm2')).toBeCloseTo(2, 6);
});
