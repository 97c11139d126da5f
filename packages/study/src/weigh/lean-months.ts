import { monthlySums } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';

/** Months, 1 to 12, in which the engine of any of the designs runs or load stays dark. */
export function leanMonths(results: readonly YearResult[]): number[] {
  const dark = results.map(({ ledger }) => monthlySums(ledger.darkWh));
  const isLean = (month: number) =>
    results.some(({ summary }, i) => summary.generator.months[month - 1]!.hours > 0 || dark[i]![month - 1]! > 0);
  return Array.from({ length: 12 }, (_, m) => m + 1).filter(isLean);
}

/** Sum of an hourly series over some months. */
export function sumInMonths(hourly: Float64Array, months: readonly number[]): number {
  const sums = monthlySums(hourly);
  return months.reduce((sum, month) => sum + sums[month - 1]!, 0);
}
