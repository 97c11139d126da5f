import { daysInMonth } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { darkSeasonOf } from './dark-season.js';

const north = [22, 38, 76, 110, 140, 150, 155, 128, 92, 55, 26, 18];
const south = [...north.slice(6), ...north.slice(0, 6)];

test('the darkest month and the dark season follow the sun, not the calendar', () => {
  expect(darkSeasonOf(north, daysInMonth)).toEqual({ month: 12, months: [11, 12, 1] });
  expect(darkSeasonOf(south, daysInMonth)).toEqual({ month: 6, months: [5, 6, 7] });
});

test('a month is dark for the load it has: a guest house of January is darkest in January', () => {
  const load = daysInMonth.map((days, m) => (m === 0 ? 3 * days : days));
  expect(darkSeasonOf(north, load).month).toBe(1);
});

test('months without load are not dark, and a place used in summer has its dark season then', () => {
  const load = daysInMonth.map((days, m) => (m >= 4 && m <= 8 ? days : 0));
  expect(darkSeasonOf(north, load)).toEqual({ month: 9, months: [5, 8, 9] });
});

test('without load the sun alone decides; of months without sun the one with more load is darker', () => {
  expect(darkSeasonOf(north, new Array<number>(12).fill(0)).month).toBe(12);
  const night = north.map((sun, m) => (m === 0 || m >= 10 ? 0 : sun));
  expect(darkSeasonOf(night, [40, ...new Array<number>(11).fill(30)]).month).toBe(1);
});
