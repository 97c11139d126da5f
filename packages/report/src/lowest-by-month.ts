import { monthStartHour } from '@wintergap/ground';

/** Lowest value of an hourly series in each month, January first. */
export function lowestByMonth(hourly: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) =>
    hourly
      .subarray(monthStartHour[month]!, monthStartHour[month + 1]!)
      .reduce((least, value) => Math.min(least, value), Infinity),
  );
}
