import { monthSpan } from '@wintergap/ground';

/** Lowest value of an hourly series in each month, January first. */
export function lowestByMonth(hourly: Float64Array): number[] {
  return Array.from({ length: 12 }, (_, month) => {
    const { fromHour, toHour } = monthSpan(month);
    return hourly.subarray(fromHour, toHour).reduce((least, value) => Math.min(least, value), Infinity);
  });
}
