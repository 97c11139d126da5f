import { expect, test } from 'vitest';
import { throttleSeason } from './throttle.js';

const year = () => new Float64Array(8760);

test('the season runs from its first throttling day to its last, and a bright day apart does not begin it', () => {
  const available = year().fill(1000);
  const thrown = year();
  // Noon of 1 April (day 90) to 30 September (day 272), and one bright day in February (day 40).
  for (let day = 90; day <= 272; day++) thrown.fill(900, day * 24 + 8, day * 24 + 16);
  const summer = throttleSeason(thrown, available);
  expect([summer.firstDate, summer.lastDate]).toEqual(['04-01', '09-30']);
  expect(summer.hours).toBe(183 * 8);
  thrown.fill(900, 40 * 24 + 8, 40 * 24 + 16);
  expect(throttleSeason(thrown, available).firstDate).toBe('04-01');
  expect(throttleSeason(thrown, available).hours).toBe(183 * 8 + 8);
  // A season across New Year, as in the south.
  const southern = year();
  for (let day = 272; day < 365 + 90; day++) southern.fill(900, (day % 365) * 24 + 8, (day % 365) * 24 + 16);
  expect(throttleSeason(southern, available)).toMatchObject({ firstDate: '09-30', lastDate: '03-31' });
});

test('the calendar holds the share of a month in which an hour of day throttles', () => {
  const available = year().fill(1000);
  const thrown = year();
  for (let day = 0; day < 10; day++) thrown[day * 24 + 12] = 20; // ten of January's 31 noons
  const { calendar } = throttleSeason(thrown, available);
  expect(calendar[0]![12]).toBeCloseTo(10 / 31, 12);
  expect(calendar.flat().filter((share) => share > 0)).toHaveLength(1);
});

test('a season that never stops is the calendar year, and one that never starts is none', () => {
  expect(throttleSeason(year().fill(1), year().fill(1))).toMatchObject({ firstDate: '01-01', lastDate: '12-31' });
  expect(throttleSeason(year(), year().fill(1))).toMatchObject({ firstDate: null, lastDate: null, hours: 0 });
});
