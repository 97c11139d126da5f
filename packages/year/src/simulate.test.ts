import { changedDesign, loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { bankSettings } from './prepare/bank-stage.js';
import { StageCache } from './prepare/stage-cache.js';
import { simulateSite } from './simulate.js';

const path = new URL('../../../examples/kettle-pond.yaml', import.meta.url).pathname;

// The tank is for those who haul the fuel: the engine runs from it whatever its size.
test('a larger fuel store changes nothing of the year', () => {
  const site = loadSite(path);
  const stages = new StageCache();
  const [small, large] = ['60 L', '600 L'].map((stored) =>
    simulateSite(changedDesign(site, { 'generator.fuel.stored': stored }), path, stages),
  );
  expect(small!.summary.generator.hours).toBeGreaterThan(0);
  expect(large!.summary).toEqual(small!.summary);
  expect(large!.ledger.fuelL).toEqual(small!.ledger.fuelL);
});

// Only stages before the balance are shared; a stale one would give the answer of the other design.
test('stages shared with other designs give the same year as stages of its own', () => {
  const site = loadSite(path);
  const stages = new StageCache();
  const designs = [site.base, ...site.variants.values(), changedDesign(site, { 'arrays.0.height': '9 m' })];
  for (const design of designs) simulateSite(design, path, stages);
  for (const design of designs) {
    expect(simulateSite(design, path, stages).summary).toEqual(simulateSite(design, path).summary);
  }
});

test('nine years of age are nine years, however they are written', () => {
  const site = loadSite(path);
  for (const age of ['9 years', '108 months']) {
    expect(bankSettings(changedDesign(site, { 'bank.age': age }).bank).ageYears).toBeCloseTo(9, 12);
  }
});
