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

test('an hour at the level is not below it', () => {
  const hourly = new Float64Array(8760).fill(1);
  hourly.fill(0.5, 100, 148);
  hourly.fill(0.49, 148, 172);
  expect(longestDaysBelow(hourly, 0.5)).toBe(1);
});

test('the longest time between runs is found wherever it lies, from the first hour of the year on', () => {
  const runs = new Float64Array(8760);
  runs[0] = 0.1;
  // Nothing else in the year: from this hour round to itself.
  expect(longestDaysBetween(runs)).toBe(8759 / 24);
  runs[8000] = 1;
  runs[8100] = 1;
  // Idle hours: 1 to 7999, 8001 to 8099, 8101 to 8759.
  expect(longestDaysBetween(runs)).toBe(7999 / 24);
});
