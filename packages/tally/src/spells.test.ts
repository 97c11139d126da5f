import { expect, test } from 'vitest';
import { longestDaysBelow, longestDaysBetween } from './spells.js';

test('a spell that spans New Year is one spell', () => {
  const hourly = new Float64Array(8760).fill(1);
  hourly.fill(0.3, 0, 48);
  hourly.fill(0.3, 8760 - 24);
  expect(longestDaysBelow(hourly, 0.5)).toBe(3);
  expect(longestDaysBelow(hourly, 0.2)).toBe(0);
  expect(longestDaysBelow(hourly, 2)).toBe(365);
});

test('the longest time between runs is measured round the year', () => {
  const runs = new Float64Array(8760);
  expect(longestDaysBetween(runs)).toBeNull();
  runs[100 * 24] = 1;
  runs[110 * 24] = 1;
  // From day 110 round New Year to day 100: 355 days less the running hour.
  expect(longestDaysBetween(runs)).toBeCloseTo(355 - 1 / 24, 12);
});
