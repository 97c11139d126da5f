import { expect, test } from 'vitest';
import { scheduledShare } from './schedule.js';

const share = (schedule: Parameters<typeof scheduledShare>[1], firstWeekday = 1) =>
  scheduledShare('thing', schedule, firstWeekday);
const daysOn = (values: Float64Array) =>
  Array.from({ length: 365 }, (_, day) => day).filter((day) =>
    values.subarray(day * 24, day * 24 + 24).some((v) => v > 0),
  );

test('a window past midnight fills both ends of the day, parts of hours included', () => {
  const day = Array.from(share({ hours: [[22.5, 1.25]] }).subarray(24, 48));
  expect(day.map((v, hour) => [hour, v]).filter(([, v]) => v !== 0)).toEqual([
    [0, 1],
    [1, 0.25],
    [22, 0.5],
    [23, 1],
  ]);
});

test('the night after Friday belongs to Friday', () => {
  // 1 January is a Monday: day 4 is Friday, day 5 Saturday, day 6 Sunday.
  const nights = share({ hours: [[22, 2]], days: 'weekdays' });
  expect(nights[5 * 24 + 1]).toBe(1);
  expect(nights[5 * 24 + 23]).toBe(0);
  expect(nights[6 * 24 + 1]).toBe(0);
  expect(nights[7 * 24 + 1]).toBe(0);
  expect(nights[7 * 24 + 22]).toBe(1);
});

test('the night after 31 December goes on at 1 January', () => {
  const night = share({ hours: [[23, 1]], season: [{ fromDay: 364, toDay: 364 }] });
  expect(night[8759]).toBe(1);
  expect(night[0]).toBe(1);
  expect(night.reduce((sum, v) => sum + v, 0)).toBe(2);
});

test('weekdays follow the weekday of 1 January', () => {
  expect(daysOn(share({ days: 'weekends' }, 0)).slice(0, 3)).toEqual([0, 6, 7]);
  expect(daysOn(share({ days: [3] }, 1)).slice(0, 2)).toEqual([2, 9]);
});

test('a season may run over the end of the year', () => {
  const winter = daysOn(share({ season: [{ fromDay: 360, toDay: 3 }] }));
  expect(winter).toEqual([0, 1, 2, 3, 360, 361, 362, 363, 364]);
});

test('months name their days', () => {
  const days = daysOn(share({ season: { months: [2, 12] } }));
  expect(days.length).toBe(28 + 31);
  expect(days[0]).toBe(31);
  expect(days[28]).toBe(334);
});
