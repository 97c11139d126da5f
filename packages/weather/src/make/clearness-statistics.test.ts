import { expect, test } from 'vitest';
import { sunOf } from '../sun-of-place.js';
import { extraterrestrialHorizontal } from './ceiling.js';
import {
  dailyClearness,
  dailyIrradiation,
  lagOneAutocorrelation,
  longestDullRun,
  monthlyClearness,
} from './clearness-statistics.js';

const place = { latitudeDeg: 68, longitudeDeg: 15, utcOffsetH: 1 };

test('daily irradiation is the sum of the hours in kWh/m2', () => {
  const days = dailyIrradiation(new Float64Array(8760).fill(250));
  expect(days.length).toBe(365);
  expect(days[364]).toBeCloseTo(6, 12);
});

test('half of what is outside the atmosphere is clearness 0.5, and nothing in polar night', () => {
  const clearness = dailyClearness(
    extraterrestrialHorizontal(sunOf(place)).map((outside) => outside / 2),
    place,
  );
  expect(clearness[172]).toBeCloseTo(0.5, 12);
  expect(clearness[355]).toBeNull();
  const months = monthlyClearness(clearness);
  expect(months[11]).toBeNull();
  expect(months[5]!.mean).toBeCloseTo(0.5, 12);
  expect(months[5]!.spread).toBeCloseTo(0, 12);
});

// Mean, population spread and deciles of 1 to 31 hundredths by hand: mean 16, spread sqrt((31^2 - 1) / 12) = 8.944.
test('month statistics are those of its days', () => {
  const clearness = Array.from({ length: 365 }, (_, day) => (day < 31 ? (day + 1) / 100 : 0.5));
  const january = monthlyClearness(clearness)[0]!;
  expect(january.mean).toBeCloseTo(0.16, 12);
  expect(january.spread).toBeCloseTo(Math.sqrt(80) / 100, 12);
  expect(january.dullTenth).toBeCloseTo(0.04, 12);
  expect(january.clearTenth).toBeCloseTo(0.28, 12);
});

test('days in pairs resemble the day before, days by turns do the opposite', () => {
  const pairs = Array.from({ length: 365 }, (_, day) => (day % 4 < 2 ? 0.3 : 0.6));
  const turns = Array.from({ length: 365 }, (_, day) => (day % 2 === 0 ? 0.3 : 0.6));
  expect(Math.abs(lagOneAutocorrelation(pairs))).toBeLessThan(0.02);
  expect(lagOneAutocorrelation(turns)).toBeLessThan(-0.97);
  const weeks = Array.from({ length: 365 }, (_, day) => (day % 20 < 10 ? 0.3 : 0.6));
  expect(lagOneAutocorrelation(weeks)).toBeGreaterThan(0.7);
  expect(lagOneAutocorrelation(new Array(365).fill(0.4))).toBe(0);
});

test('a dull run is counted over the turn of the year', () => {
  const days = new Float64Array(365).fill(4);
  for (const day of [362, 363, 364, 0, 1]) days[day] = 0.5;
  for (const day of [200, 201, 202]) days[day] = 0.5;
  expect(longestDullRun(days, 0.5)).toEqual({ days: 5, firstDay: 362 });
  expect(longestDullRun(days, 0.5, [6])).toEqual({ days: 3, firstDay: 200 });
  expect(longestDullRun(new Float64Array(365).fill(4), 0.5)).toEqual({ days: 0, firstDay: 0 });
});
