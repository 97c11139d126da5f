import { assertCloses, yearSum } from '@wintergap/tally';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { carryBalance, converterInEnginePlace } from './converter-in-engine-place.js';

const { base } = inventedSite();
const prepared = new PreparedCache();
const simulate = (site: typeof base) => simulateSite(site, prepared);
const asItIs = simulate(base);

test('demand is what the engine gave, and surplus what a full bank threw away', () => {
  const { surplusWh, demandWh, beyondWh } = carryBalance(asItIs);
  const { generator, throttle } = asItIs.summary;
  expect(generator.toBusKWh).toBeGreaterThan(10);
  expect(yearSum(demandWh) / 1000).toBeCloseTo(generator.toBusKWh, 9);
  expect(yearSum(surplusWh) / 1000).toBeCloseTo(throttle.kWh, 9);
  expect(beyondWh).toBe(0);
});

test('converter out leaves nothing dark, holds the bank about where the engine would start, and needs no more than it', () => {
  const { year, demandWh, powerW } = converterInEnginePlace(base, asItIs, simulate);
  assertCloses(year.ledger);
  expect(year.summary.load.darkKWh).toBeCloseTo(0, 6);
  expect(year.summary.bank.minStateOfCharge).toBeGreaterThan(0.4);
  expect(yearSum(demandWh) / 1000).toBeLessThan(asItIs.summary.generator.toBusKWh);
  expect(Math.max(...demandWh)).toBeLessThanOrEqual(powerW * (1 + 1e-9));
  // The engine of the site is many times larger.
  expect(powerW).toBeLessThan(500);
});

test('dark load counts as what it would have drawn on the DC bus', () => {
  const year = simulate(inventedSite('', '').base);
  const { demandWh } = carryBalance(year);
  const darkKWh = year.summary.load.darkKWh;
  expect(darkKWh).toBeGreaterThan(3);
  // AC load is drawn through an inverter of at most 93 %, which idles as well; DC load as it is.
  expect(yearSum(demandWh) / 1000).toBeGreaterThan(darkKWh);
  expect(yearSum(demandWh) / 1000).toBeLessThan(2 * darkKWh);
});

test('AC load above the inverter is beyond any store on the DC bus', () => {
  const small = { ...base, inverter: { ...base.inverter!, power: 30, idle: 0.5 } };
  const { generator: _engine, ...withoutEngine } = small;
  const { beyondWh } = carryBalance(simulate(withoutEngine));
  // The freezer draws 36 W all year, 6 W of it above the inverter's 30 W.
  expect(beyondWh / 8760).toBeCloseTo(6, 1);
});
