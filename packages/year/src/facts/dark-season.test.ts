import { daysInMonth } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { autonomyQuestion, darkSeason, darkSeasonOf, monthMean } from './dark-season.js';
import { always, quietYear } from './year.fixture.js';

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

test('without load the days of a month count: February with as much sun as January is the brighter', () => {
  const sun = daysInMonth.map((_, m) => (m < 2 ? 10 : 100));
  expect(darkSeasonOf(sun, new Array<number>(12).fill(0)).month).toBe(1);
  const rising = daysInMonth.map((_, m) => 10 + m / 2);
  expect(darkSeasonOf(rising, new Array<number>(12).fill(0)).months).toEqual([1, 2, 3]);
  // 31 units in 31 days are darker than 29 in 28.
  const first = daysInMonth.map((_, m) => [31, 29][m] ?? 100);
  expect(darkSeasonOf(first, new Array<number>(12).fill(0)).month).toBe(1);
});

test('of two months without sun the one with more load is darker, whichever comes first', () => {
  const night = north.map((sun, m) => (m < 2 ? 0 : sun));
  const load = (first: number, second: number) => [first, second, ...new Array<number>(10).fill(30)];
  expect(darkSeasonOf(night, load(40, 30)).month).toBe(1);
  expect(darkSeasonOf(night, load(30, 40)).month).toBe(2);
});

test('a month of polar night in which nobody is there is not dark', () => {
  const [, ...others] = north;
  const away = daysInMonth.map((days, m) => (m === 0 ? 0 : days));
  expect(darkSeasonOf([0, ...others], away)).toEqual({ month: 12, months: [11, 12, 2] });
});

test('months that lie evenly apart begin with the first of the year', () => {
  const dull = daysInMonth.map((_, m) => (m % 4 === 0 ? 10 : 100));
  expect(darkSeasonOf(dull, daysInMonth).months).toEqual([1, 5, 9]);
});

test('AC and DC load count alike', () => {
  const ghiWm2 = always(100);
  const inMarch = (w: number) => always(50).map((base, h) => (h >= 1416 && h < 2160 ? w : base));
  expect(darkSeason(ghiWm2, inMarch(80), always(50)).month).toBe(3);
  expect(darkSeason(ghiWm2, always(50), inMarch(80)).month).toBe(3);
});

// 28 days of February; the hour before and the hour after belong to its neighbours.
test('the mean of a month is that of its hours', () => {
  const hourly = always(0);
  hourly[743] = 1000;
  hourly[744] = 672;
  hourly[1415] = 672;
  hourly[1416] = 1000;
  expect(monthMean(hourly, 2)).toBe(2);
});

test('a month asks the bank for all that its DC bus draws, at no more than 50 degC', () => {
  const { plant } = quietYear({ acW: () => 100, dcW: () => 40, inverterIdleW: 10 });
  const drawing = { ...plant, ownUseW: always(5) };
  expect(autonomyQuestion(drawing, always(-7), 1)).toEqual({ averageLoadW: 155, tempC: -7 });
  expect(autonomyQuestion(drawing, always(55), 1).tempC).toBe(50);
});
