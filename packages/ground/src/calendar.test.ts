import { expect, test } from 'vitest';
import { dateOfDay, dayOfDate, daysInMonth, monthSpan, monthStartHour } from './calendar.js';

test('every day of the year has a date that leads back to it', () => {
  for (let day = 0; day < 365; day++) expect(dayOfDate(dateOfDay(day))).toBe(day);
  expect([dateOfDay(0), dateOfDay(59), dateOfDay(364)]).toEqual(['01-01', '03-01', '12-31']);
  for (const wrong of ['02-29', '13-01', '00-10', '4-31', 'May 1', '']) expect(dayOfDate(wrong)).toBeNull();
});

test('months begin where the days before them end', () => {
  let hours = 0;
  daysInMonth.forEach((days, month) => {
    expect(monthStartHour[month]).toBe(hours);
    hours += days * 24;
  });
  expect(hours).toBe(monthStartHour[12]);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour, fromDay, toDay, days } = monthSpan(month);
    expect([fromHour, toHour]).toEqual([monthStartHour[month], monthStartHour[month + 1]]);
    expect([fromDay * 24, toDay * 24, toDay - fromDay]).toEqual([fromHour, toHour, days]);
  }
  expect(() => monthSpan(12)).toThrow('month must be a whole number from 0 to 11, got 12');
});
