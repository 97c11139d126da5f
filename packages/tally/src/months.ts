import { monthSpan } from '@wintergap/ground';

/** Sums of an hourly series by month, January first. */
export function monthlySums(hourly: Float64Array): Float64Array {
  const sums = new Float64Array(12);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour } = monthSpan(month);
    let sum = 0;
    for (let h = fromHour; h < toHour; h++) sum += hourly[h]!;
    sums[month] = sum;
  }
  return sums;
}

/** How many hours of each month hold a value above `threshold`. */
export function monthlyHoursAbove(hourly: Float64Array, threshold: number): Float64Array {
  const counts = new Float64Array(12);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour } = monthSpan(month);
    for (let h = fromHour; h < toHour; h++) if (hourly[h]! > threshold) counts[month]!++;
  }
  return counts;
}

/** Sum of an hourly series. */
export function yearSum(hourly: Float64Array): number {
  let sum = 0;
  for (let h = 0; h < hourly.length; h++) sum += hourly[h]!;
  return sum;
}
