import { changedDesign, loadSite, type Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { expect, test } from 'vitest';
import { preparePlant } from './prepare-plant.js';
import { identityOf, PreparedCache } from './prepared-cache.js';
import { limitsUnder } from './site-limits.js';
import { siteWeather } from './site-weather.js';

/** A cache that notes what had to be made. */
class NotingCache extends PreparedCache {
  made: string[] = [];

  override get<Thing>(what: string, inputs: readonly unknown[], make: () => Thing): Thing {
    return super.get(what, inputs, () => {
      this.made.push(what);
      return make();
    });
  }
}

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
const weather = siteWeather(site.base);
const cache = new NotingCache();
/** All that is made before a year is run. */
function prepare(design: Site, under: WeatherYear): void {
  const { plant } = preparePlant(design, { weather: under, measured: null }, cache);
  limitsUnder(design, under, plant.bank, cache);
}

prepare(site.base, weather);

// What a design does not change must not be computed again: a sweep over banks would take many times as long.
test.each([
  [{}, []],
  [{ 'bank.capacity': '700 Ah' }, ['bank']],
  [{ 'bank.floor': '40 %', 'generator.start.below': '50 %' }, ['bank', 'generator']],
  // The limits hold the array's voltage against what the bank is charged at.
  [{ 'bank.absorption': '29.4 V' }, ['bank', 'limits']],
  [{ 'bank.voltage': '48 V', 'bank.capacity': '500 Ah' }, ['bank', 'controller', 'limits']],
  [{ 'arrays.0.controller.maxCurrent': '40 A' }, ['controller', 'limits']],
  [{ 'arrays.0.strings': 4 }, ['controller', 'dc', 'limits']],
  [{ 'arrays.0.cable.length': '40 m' }, ['controller', 'dc', 'limits']],
  [
    { 'arrays.0.module.noct': '47 degC', 'arrays.0.cellModel': 'noct' },
    ['cells', 'controller', 'dc', 'limits', 'module'],
  ],
  [{ 'arrays.0.height': '9 m' }, ['cells', 'controller', 'dc', 'light', 'mounted', 'plane']],
  [{ snow: { cover: 'none' } }, ['controller', 'dc', 'plane']],
  [{ 'inverter.idle': '30 W' }, ['loads']],
  [{ 'ground.albedo': 0.3 }, ['cells', 'controller', 'dc', 'ground', 'light', 'plane']],
])('%j makes anew only %j', (changes, made) => {
  cache.made = [];
  prepare(changedDesign(site, changes), weather);
  expect(cache.made.sort()).toEqual(made);
});

test('a copy of the weather is another weather', () => {
  cache.made = [];
  prepare(site.base, { ...weather });
  expect(cache.made.sort()).toEqual(['cells', 'controller', 'dc', 'generator', 'ground', 'light', 'loads', 'plane']);
});

test('of each kind the latest are kept, and what was found again counts as the latest', () => {
  const small = new PreparedCache(2);
  const made: number[] = [];
  const get = (n: number) => small.get('numbers', [n], () => made.push(n));
  for (const n of [1, 2, 1, 3, 1, 2]) get(n);
  small.get('others', [1], () => 0);
  get(2);
  expect(made).toEqual([1, 2, 3, 2]);
});

test('what hangs on no weather year is kept for all of them, however few parts of a year are', () => {
  const lasting = new NotingCache();
  for (let year = 0; year < 3; year++) {
    const under = { ...weather };
    preparePlant(site.base, { weather: under, measured: null }, new PreparedCache(1, lasting));
  }
  expect(lasting.made.sort()).toEqual(['bank', 'module', 'mounted', 'sun']);
});

test('an object keeps its number, and no other has it', () => {
  const one = {};
  expect(identityOf(one)).toBe(identityOf(one));
  expect(identityOf({})).not.toBe(identityOf({}));
});
