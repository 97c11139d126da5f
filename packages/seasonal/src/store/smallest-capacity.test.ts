import { expect, test } from 'vitest';
import { createFlows, type HourlyFlows } from './hourly-flows.js';
import { smallestCapacity, unmetInSettledYear } from './smallest-capacity.js';

/** A year of a few hours: what arrives in the store and what is needed behind a converter of 50 %. */
function flows(supplyWh: readonly number[], needWh: readonly number[]): HourlyFlows {
  const made = createFlows(supplyWh.length);
  made.supplyWh.set(supplyWh);
  made.needWh.set(needWh);
  made.drawWh.set(needWh.map((need) => need / 0.5));
  return made;
}

// 100 Wh come in the first hour; 20 and 30 Wh are needed in the third and fourth: 40 and 60 Wh at the store.
const evening = flows([100, 0, 0, 0], [0, 0, 20, 30]);

test('a store as large as what is carried leaves nothing unmet, half of it half, none everything', () => {
  expect(unmetInSettledYear(evening, 0.5, 100, 0)).toBe(0);
  expect(unmetInSettledYear(evening, 0.5, 500, 0)).toBe(0);
  expect(unmetInSettledYear(evening, 0.5, 50, 0)).toBe(25);
  expect(unmetInSettledYear(evening, 0.5, 0, 0)).toBe(50);
  // What comes and goes in the same hour asks no store.
  expect(unmetInSettledYear(flows([100], [50]), 0.5, 0, 0)).toBe(0);
  // A tenth leaks in each hour: of 100 Wh 81 are there in the third, of 41 left 36.9 in the fourth: 18.45 of 30 Wh.
  expect(unmetInSettledYear(evening, 0.5, 500, 0.1)).toBeCloseTo(30 - 18.45, 9);
});

test('the smallest capacity is what must be carried, less what may stay unmet', () => {
  expect(smallestCapacity(evening, 0.5, 0, 0)).toBeCloseTo(100, 6);
  expect(smallestCapacity(evening, 0.5, 0, 10)).toBeCloseTo(80, 6);
  expect(smallestCapacity(evening, 0.5, 0, 50)).toBe(0);
  expect(smallestCapacity(flows([100], [50]), 0.5, 0, 0)).toBe(0);
  const plenty = flows([1000, 0, 0, 0], [0, 0, 20, 30]);
  // Backwards from 60 Wh in the last hour with a tenth lost in each: 60/0.9 + 40 = 106.7, /0.9 /0.9 = 131.7.
  expect(smallestCapacity(plenty, 0.5, 0.1, 0)).toBeCloseTo((60 / 0.9 + 40) / 0.81, 6);
});

test('where no store covers the year there is none, unless enough may stay unmet', () => {
  expect(smallestCapacity(evening, 0.5, 0.1, 0)).toBeNull();
  expect(smallestCapacity(evening, 0.5, 0.1, 11)).toBeNull();
  // 11.55 Wh stay open with any store; then one that holds all of the supply, and with a little more allowed a smaller one.
  expect(smallestCapacity(evening, 0.5, 0.1, 11.5501)).toBeCloseTo(100, 1);
  expect(smallestCapacity(evening, 0.5, 0.1, 20)!).toBeLessThan(85);
  expect(smallestCapacity(flows([10, 0], [0, 20]), 0.5, 0, 0)).toBeNull();
  expect(smallestCapacity(flows([10, 0], [0, 20]), 0.5, 0, 15)).toBeCloseTo(10, 6);
});
