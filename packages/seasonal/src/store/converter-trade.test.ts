import { expect, test } from 'vitest';
import { sumAndPeak, tryConverters } from './converter-trade.js';
import type { StoreTechnology } from './seasonal-store.js';

const technology = (minimumLoad = 0, standbyW = 0): StoreTechnology => ({
  kind: 'own',
  converterIn: { efficiency: 0.8, minimumLoad, standbyW },
  standingLossPerH: 0,
  converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
});

test('the sum of a year and its largest hour', () => {
  expect(sumAndPeak([3, 7, 0, 5])).toEqual({ sum: 15, peak: 7 });
  expect(sumAndPeak([])).toEqual({ sum: 0, peak: 0 });
});

// Two hours of 1000 and 500 W of surplus, then two of demand. 240 Wh through 50 % and 80 % ask for 600 Wh of surplus: a
// converter of P takes min(P, 1000) + min(P, 500), so 300 W just does, whatever stands above.
const surplusWh = [1000, 500, 0, 0];
const demandWh = [0, 0, 140, 100];

test('the smallest converter in that covers the year is found, and the store is what the demand draws', () => {
  const trade = tryConverters(surplusWh, demandWh, technology(), 10, 1000, 0);
  if (!trade.closes) throw new Error('this year is covered');
  const [smallest] = trade.points;
  expect(smallest!.converterInW).toBeCloseTo(300, 1);
  expect(smallest!.converterInW).toBeGreaterThanOrEqual(300);
  expect(smallest!.capacityWh).toBeCloseTo(480, 6);
  expect(smallest!.converterOutW).toBe(140);
  // More power buys no smaller store here: nothing else is on the trade.
  expect(trade.points).toHaveLength(1);
});

test('a demand between two hours of sun lets a larger converter do with a smaller store', () => {
  // 1000 W of surplus before a demand of 200 Wh, and again after it: 500 Wh must come through in one hour or two.
  const trade = tryConverters([1000, 0, 1000, 0, 0], [0, 200, 0, 0, 0], technology(), 10, 1000, 0);
  if (!trade.closes) throw new Error('this year is covered');
  const { points } = trade;
  // Half of the surplus in each of two hours at 250 W, with all 400 Wh kept over the end; or 500 W alone: 400 Wh as well.
  expect(points[0]!.converterInW).toBeCloseTo(250, 1);
  for (let i = 1; i < points.length; i++) {
    expect(points[i]!.converterInW).toBeGreaterThan(points[i - 1]!.converterInW);
    expect(points[i]!.capacityWh).toBeLessThan(points[i - 1]!.capacityWh);
  }
});

test('with a minimum load the thin hours are lost to a large converter', () => {
  // With 60 % of minimum load a converter of more than 500 / 0.6 = 833 W leaves the hour of 500 W.
  const trade = tryConverters(surplusWh, [0, 0, 220, 200], technology(0.6), 10, 1000, 0);
  if (!trade.closes) throw new Error('this year is covered');
  // 420 Wh ask for 1050 Wh of surplus: 550 from the first hour, 500 from the second.
  expect(trade.points[0]!.converterInW).toBeCloseTo(550, 0);
});

test('a surplus too small leaves least unmet with the converter that takes most', () => {
  const trade = tryConverters(surplusWh, [0, 0, 900, 0], technology(), 10, 1000, 0);
  if (trade.closes) throw new Error('this year is not covered');
  // All 1500 Wh of surplus through 80 % can be kept; the largest power is needed for it.
  expect(trade.best.converterInW).toBeCloseTo(1000, 9);
  expect(trade.best.capacityWh).toBeCloseTo(1200, 6);
  expect(trade.best.converterOutW).toBe(900);
  // Just below 833 W it takes 1333 Wh, at 1000 W only the first hour.
  const thin = tryConverters(surplusWh, [0, 0, 900, 0], technology(0.6), 10, 1000, 0);
  if (thin.closes) throw new Error('this year is not covered');
  expect(thin.best.converterInW).toBeLessThan(834);
  expect(thin.best.converterInW).toBeGreaterThan(650);
});

test('what may stay unmet lets the converter be smaller', () => {
  const trade = tryConverters(surplusWh, demandWh, technology(), 10, 1000, 40);
  if (!trade.closes) throw new Error('this year is covered');
  // 200 of 240 Wh: 250 W.
  expect(trade.points[0]!.converterInW).toBeCloseTo(250, 1);
  expect(trade.points[0]!.capacityWh).toBeCloseTo(400, 0);
});

test('a ladder of no height is one rung', () => {
  const trade = tryConverters(surplusWh, demandWh, technology(), 1000, 1000, 0);
  if (!trade.closes) throw new Error('this year is covered');
  expect(trade.points.at(-1)!.converterInW).toBeLessThanOrEqual(1000);
  const none = tryConverters([0, 0], [0, 10], technology(), 5, 0, 0);
  expect(none).toEqual({ closes: false, best: { converterInW: 0, capacityWh: 0, converterOutW: 10 } });
});
