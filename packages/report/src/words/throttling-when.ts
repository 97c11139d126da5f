import { dateInWords, dayOfDate } from '@wintergap/ground';
import type { Summary } from '@wintergap/tally';
import { dateText } from './figures.js';

/** Out of season for less than this, and what is worth saying is when the charger does not throttle. */
const shortRestDays = 90;

/** When of the year the charger throttles for a full bank, to follow on `throttles`. */
export function throttlingWhen({ firstDate, lastDate }: Pick<Summary['throttle'], 'firstDate' | 'lastDate'>): string {
  if (firstDate === null || lastDate === null) return 'on single days at most';
  const first = dayOfDate(firstDate) ?? 0;
  const last = dayOfDate(lastDate) ?? 0;
  const restDays = (first - last - 1 + 365) % 365;
  if (first === last) return `on ${dateText(firstDate)}`;
  if (restDays === 0) return 'at times all year';
  if (restDays > shortRestDays) return `between ${dateText(firstDate)} and ${dateText(lastDate)}`;
  return `at times all year but from ${dateInWords((last + 1) % 365)} to ${dateInWords((first + 364) % 365)}`;
}
