import { expect, test } from 'vitest';
import type { StoreTechnology } from './seasonal-store.js';
import { smallestClosingArray } from './smallest-closing-array.js';

const technology: StoreTechnology = {
  kind: 'own',
  converterIn: { efficiency: 0.6, minimumLoad: 0, standbyW: 0 },
  standingLossPerH: 0,
  converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
};

/** Invented: 1000 Wh of surplus by day in the light half at scale 1, and a dark-half demand that a larger array eats into. */
const scaled = (demandW: number) => (scale: number) => ({
  surplusWh: Float64Array.from({ length: 730 }, (_, h) => (h < 365 ? 1000 * scale : 0)),
  demandWh: Float64Array.from({ length: 730 }, (_, h) => (h >= 365 ? Math.max(0, demandW - 100 * scale) : 0)),
});

test.each([200, 900, 1300, 4000])('a demand of %d W closes at the scale where both sides meet, to 1 %%', (demandW) => {
  // Surplus x round trip = demand: 0.3 x 1000 s = D - 100 s, so s = D/400.
  const array = smallestClosingArray(scaled(demandW), technology, 0, 16);
  if (!array.closes) throw new Error('the loop must close');
  const exact = demandW / 400;
  expect(array.scale).toBeGreaterThanOrEqual(exact * (1 - 1e-6));
  expect(array.scale).toBeLessThan(exact * 1.01);
  expect(array.scaleWithAllowance).toBeCloseTo(1.2 * array.scale, 12);
  expect(array.needsStore).toBe(true);
  expect(array.yearsSimulated).toBeLessThanOrEqual(12);
  expect(array.size.year.totals.unmetWh).toBeLessThan(1e-8 * array.size.demandWh);
});

test('an array that never closes the loop is given up at the largest scale allowed', () => {
  const array = smallestClosingArray(scaled(9000), technology, 0, 10);
  expect(array).toMatchObject({ closes: false, largestTried: 10, yearsSimulated: 5 });
});

test('a design without demand needs no store at any scale tried', () => {
  const array = smallestClosingArray(scaled(0), technology, 0, 16);
  expect(array).toMatchObject({ closes: true, scale: 1 / 16, needsStore: false });
});
