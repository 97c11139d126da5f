import { daysPerYear, hoursPerYear } from '@wintergap/ground';

/** One value for each day of the year from that day's hours of an hourly series. */
function daily(hourly: ArrayLike<number>, start: number, join: (soFar: number, value: number) => number): number[] {
  const values = new Array<number>(daysPerYear).fill(start);
  for (let h = 0; h < hoursPerYear; h++) {
    const day = Math.floor(h / 24);
    values[day] = join(values[day]!, hourly[h]!);
  }
  return values;
}

export const dailyLowest = (hourly: ArrayLike<number>): number[] => daily(hourly, Infinity, Math.min);
export const dailyHighest = (hourly: ArrayLike<number>): number[] => daily(hourly, -Infinity, Math.max);
export const dailySum = (hourly: ArrayLike<number>): number[] => daily(hourly, 0, (sum, value) => sum + value);

/** A state at noon, from a series of states at the hours' ends: that at the end of the twelfth hour. */
export const atNoon = (hourly: ArrayLike<number>): number[] =>
  Array.from({ length: daysPerYear }, (_, day) => hourly[day * 24 + 11]!);

/** Mean of a month's daily values. */
export const meanOfMonth = (perDay: readonly number[], firstDay: number, endDay: number): number =>
  perDay.slice(firstDay, endDay).reduce((sum, value) => sum + value, 0) / (endDay - firstDay);
