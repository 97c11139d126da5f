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

test('an hour throttles above a hundredth of what it offered, and counts for its own month', () => {
  const available = year();
  const thrown = year();
  const startOfFebruary = 31 * 24;
  available[startOfFebruary] = 1000;
  thrown[startOfFebruary] = 11;
  available[startOfFebruary + 1] = 1000;
  thrown[startOfFebruary + 1] = 9;
  // Nights offer nothing and throw nothing away.
  const { hours, calendar } = throttleSeason(thrown, available);
  expect(hours).toBe(1);
  expect(calendar[1]![0]).toBe(1 / 28);
  expect(calendar.flat().filter((share) => share > 0)).toHaveLength(1);
});

test('days that offer nothing are out of season, as are those that throw a fiftieth away', () => {
  const available = year();
  const thrown = year();
  // 1 April (day 90) to 30 September (day 272); a polar night around it.
  for (let day = 90; day <= 272; day++) {
    available.fill(1000, day * 24 + 8, day * 24 + 16);
    thrown.fill(900, day * 24 + 8, day * 24 + 16);
  }
  expect(throttleSeason(thrown, available)).toMatchObject({ firstDate: '04-01', lastDate: '09-30' });
  for (let day = 0; day < 365; day++) {
    if (day >= 90 && day <= 272) continue;
    available.fill(1000, day * 24 + 8, day * 24 + 16);
    thrown.fill(20, day * 24 + 8, day * 24 + 16);
  }
  expect(throttleSeason(thrown, available)).toMatchObject({ firstDate: '04-01', lastDate: '09-30' });
});

test('the fortnight around a day reaches seven days to either side', () => {
  // 2400 Wh a day offered, so 36 000 in fifteen days and 33 600 in fourteen. Dull days 30 to 50 throw 130 away (5.4 %), days 40
  // and 41 throw 2000 each: a tenth is exceeded where both lie in the fifteen days, not where one does (2000 + 10 x 130 = 3300).
  // That is so of days 34 to 47: 4 to 17 February.
  const available = year().fill(100);
  const thrown = year();
  for (let day = 30; day <= 50; day++) thrown.fill(130 / 24, day * 24, day * 24 + 24);
  for (const day of [40, 41]) thrown.fill(2000 / 24, day * 24, day * 24 + 24);
  expect(throttleSeason(thrown, available)).toMatchObject({ firstDate: '02-04', lastDate: '02-17' });
});

test('a season that never stops is the calendar year, though New Year itself be dull', () => {
  const thrown = year().fill(0.5);
  thrown.fill(0, 0, 24);
  expect(throttleSeason(thrown, year().fill(1))).toMatchObject({ firstDate: '01-01', lastDate: '12-31' });
});
