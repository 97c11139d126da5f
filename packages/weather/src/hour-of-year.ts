export const hoursPerYear = 8760;

/** First hour of each month, and 8760 as the thirteenth entry. */
export const monthStartHour: readonly number[] = [
  0, 744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760,
];

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
