import { OutOfRangeError } from './range.js';

/** Hours in the simulated year: 365 days, no leap day. */
export const hoursPerYear = 8760;

/** Days in the simulated year. */
export const daysPerYear = 365;

/** Days in each month of the simulated year. */
export const daysInMonth: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** First hour of each month, and 8760 as the thirteenth entry. */
export const monthStartHour: readonly number[] = [
  0, 744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760,
];

/** The hours and days of one month, from the first up to but not including the last. */
export interface MonthSpan {
  fromHour: number;
  toHour: number;
  fromDay: number;
  toDay: number;
  days: number;
}

const monthSpans: readonly MonthSpan[] = daysInMonth.map((days, month) => {
  const fromHour = monthStartHour[month]!;
  const fromDay = fromHour / 24;
  return { fromHour, toHour: fromHour + days * 24, fromDay, toDay: fromDay + days, days };
});

/** Where a month, 0 to 11, lies in the year. */
export function monthSpan(month: number): MonthSpan {
  const span = monthSpans[month];
  if (!span) throw new OutOfRangeError(`month must be a whole number from 0 to 11, got ${month}`);
  return span;
}

/** Short month names for tables and dates. */
export const monthNames: readonly string[] = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** Month, 0 to 11, that the day of the year (0 to 364) falls in. */
export function monthOfDay(day: number): number {
  let month = 0;
  while (month < 11 && monthStartHour[month + 1]! <= day * 24) month++;
  return month;
}

/** `MM-DD` of a day of the year, 0 for 1 January to 364 for 31 December. */
export function dateOfDay(day: number): string {
  const month = monthOfDay(day);
  const dayOfMonth = day - monthStartHour[month]! / 24 + 1;
  return `${String(month + 1).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}

/** Day of the year, 0 to 364, of an `MM-DD` date; `null` when there is no such day in a common year. */
export function dayOfDate(date: string): number | null {
  const match = /^(\d{1,2})-(\d{1,2})$/.exec(date.trim());
  if (!match) return null;
  const month = Number(match[1]) - 1;
  const day = Number(match[2]);
  const days = daysInMonth[month];
  if (days === undefined || day < 1 || day > days) return null;
  return monthStartHour[month]! / 24 + day - 1;
}

const fullMonthNames = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** `December` of a month, 1 for January. */
export const monthInWords = (month: number): string => fullMonthNames[month - 1] ?? '';

/** `2 April` of a day of the year, 0 for 1 January. */
export function dateInWords(day: number): string {
  const month = monthOfDay(day);
  return `${day - monthStartHour[month]! / 24 + 1} ${fullMonthNames[month]}`;
}

/** What hour of the common year a date names: an index, the leap day, or nothing on the calendar. */
export type HourOfYear = number | 'leap day' | 'no date';

/** Index of the hour that begins at `hour` (0 to 23) of a date; month and day count from 1. */
export function hourOfYear(month: number, day: number, hour: number): HourOfYear {
  if (!Number.isInteger(month) || !Number.isInteger(day) || !Number.isInteger(hour)) return 'no date';
  if (month < 1 || month > 12 || day < 1 || hour < 0 || hour > 23) return 'no date';
  if (month === 2 && day === 29) return 'leap day';
  const index = monthStartHour[month - 1]! + (day - 1) * 24 + hour;
  return index < monthStartHour[month]! ? index : 'no date';
}

/** Month, 0 to 11, that an hour of the year falls in. */
export function monthOfHour(hour: number): number {
  let month = 0;
  while (month < 11 && monthStartHour[month + 1]! <= hour) month++;
  return month;
}

const two = (n: number): string => String(n).padStart(2, '0');

/** `MM-DD HH:00` of the start of an hour of the year. */
export function hourText(hour: number): string {
  const month = monthOfHour(hour);
  const inMonth = hour - monthStartHour[month]!;
  return `${two(month + 1)}-${two(Math.floor(inMonth / 24) + 1)} ${two(inMonth % 24)}:00`;
}

/** Whether a day lies in a range of days, both ends included, across New Year where `toDay` is the smaller. */
export function dayIsWithin(day: number, fromDay: number, toDay: number): boolean {
  return fromDay <= toDay ? day >= fromDay && day <= toDay : day >= fromDay || day <= toDay;
}
