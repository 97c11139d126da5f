import { createHash } from 'node:crypto';
import { bankSettings, changedDesign, loadSite } from '@wintergap/site';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PreparedCache } from './prepare/prepared-cache.js';
import { siteWeather } from './prepare/site-weather.js';
import { simulateSite, simulateWeather } from './simulate.js';
import type { YearResult } from './year-result.js';

const path = new URL('../../../examples/kettle-pond.yaml', import.meta.url).pathname;

// The tank is for those who haul the fuel: the engine runs from it whatever its size.
test('a larger fuel store changes nothing of the year', () => {
  const site = loadSite(path);
  const prepared = new PreparedCache();
  const [small, large] = ['60 L', '600 L'].map((stored) =>
    simulateSite(changedDesign(site, { 'generator.fuel.stored': stored }), prepared),
  );
  expect(small!.summary.generator.hours).toBeGreaterThan(0);
  expect(large!.summary).toEqual(small!.summary);
  expect(large!.ledger.fuelL).toEqual(small!.ledger.fuelL);
});

/** All numbers of a year's ledger, to the last bit. */
function bitsOf({ ledger }: YearResult): string {
  const hash = createHash('sha256');
  for (const column of Object.values(ledger)) if (column instanceof Float64Array) hash.update(column);
  return hash.digest('hex');
}

// Only what is made before the balance is shared; what belongs to another design or weather would give its answer.
test('one cache for many designs and weathers gives each the year that it has alone', () => {
  const site = loadSite(path);
  const changes = [
    { 'arrays.0.height': '9 m' },
    { 'bank.voltage': '48 V', 'bank.cabinet.insulation.area': '6 m2' },
    { 'arrays.0.strings': 2 },
  ];
  const designs = [site.base, site.variants.get('fixed')!, ...changes.map((change) => changedDesign(site, change))];
  const usual = siteWeather(site.base);
  // All of one name and place.
  const weathers = [
    usual,
    { ...usual, ghiWm2: usual.ghiWm2.map((w) => w / 2), dniWm2: usual.dniWm2.map((w) => w / 2) },
    { ...usual, airC: usual.airC.map((airC) => airC + 5) },
  ];
  const pairs = designs.flatMap((design) => weathers.map((weather) => [design, weather] as const));
  const alone = pairs.map(([design, weather]) => bitsOf(simulateWeather(design, weather)));
  expect(new Set(alone).size).toBe(pairs.length);
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(pairs.length - 1), { minLength: 2, maxLength: 6 }), fc.nat(20), (order, most) => {
      const prepared = new PreparedCache(most);
      for (const at of [...order, order[0]!]) {
        const [design, weather] = pairs[at]!;
        expect(bitsOf(simulateWeather(design, weather, prepared)), `pair ${at}`).toBe(alone[at]);
      }
    }),
    { numRuns: 5 },
  );
});

test('a cache gives the same weather twice, and only to the same site', () => {
  const site = loadSite(path);
  const prepared = new PreparedCache();
  const weather = siteWeather(site.base, prepared);
  expect(siteWeather(site.variants.get('fixed')!, prepared)).toBe(weather);
  expect(siteWeather(changedDesign(site, { 'place.elevation': '900 m' }), prepared)).not.toBe(weather);
});

test('a site built in code, without a file, runs as one that was read', () => {
  const { base } = loadSite(path);
  const { origin: _, ...built } = base;
  expect(bitsOf(simulateSite(built))).toBe(bitsOf(simulateSite(base)));
});

test('weather from far away is a problem of the place, told where it stands', () => {
  const site = loadSite(path);
  const weather = siteWeather(site.base);
  const far = { ...weather, place: { ...weather.place, latitudeDeg: -20 } };
  expect(() => simulateWeather(site.base, far)).toThrow(/kettle-pond\.yaml:\d+:1: place: the site is at/);
});

test('nine years of age are nine years, however they are written', () => {
  const site = loadSite(path);
  for (const age of ['9 years', '108 months']) {
    expect(bankSettings(changedDesign(site, { 'bank.age': age }).bank).ageYears).toBeCloseTo(9, 12);
  }
});
