import { monthlySums } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';

/** Months, 1 to 12, in which the engine of any of the designs runs. */
export function engineMonths(results: readonly YearResult[]): number[] {
  const months = Array.from({ length: 12 }, (_, m) => m + 1);
  return months.filter((month) => results.some(({ summary }) => summary.generator.months[month - 1]!.hours > 0));
}

/** Sum of an hourly series over some months. */
export function sumInMonths(hourly: Float64Array, months: readonly number[]): number {
  const sums = monthlySums(hourly);
  return months.reduce((sum, month) => sum + sums[month - 1]!, 0);
}
