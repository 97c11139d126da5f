import { daysPerYear, hoursPerYear, monthOfHour, monthSpan } from '@wintergap/ground';
import { mean, quantile, standardDeviation } from 'simple-statistics';
import { type SunPlace, sunOf } from '../sun-of-place.js';
import { extraterrestrialHorizontal } from './ceiling.js';

/** Sum of each day of an hourly year in W/m2, as kWh/m2. */
export function dailyIrradiation(hourlyWm2: Float64Array): Float64Array {
  const days = new Float64Array(daysPerYear);
  for (let h = 0; h < hoursPerYear; h++) days[Math.floor(h / 24)]! += hourlyWm2[h]! / 1000;
  return days;
}

/**
 * Daily clearness index: global over extraterrestrial irradiation on the horizontal. `null` on days that bring less
 * than 0.05 kWh/m2 above the atmosphere, where the ratio says nothing.
 */
export function dailyClearness(ghiWm2: Float64Array, place: SunPlace): (number | null)[] {
  const most = dailyIrradiation(extraterrestrialHorizontal(sunOf(place)));
  const got = dailyIrradiation(ghiWm2);
  return Array.from(got, (kWh, day) => (most[day]! >= 0.05 ? kWh / most[day]! : null));
}

/** How the days of one month spread. */
export interface MonthClearness {
  mean: number;
  /** Standard deviation of the days. */
  spread: number;
  /** One day in ten is duller than this. */
  dullTenth: number;
  /** One day in ten is clearer than this. */
  clearTenth: number;
}

/** Statistics of the daily clearness for the twelve months; `null` for a month with under ten days of sun. */
export function monthlyClearness(clearness: readonly (number | null)[]): (MonthClearness | null)[] {
  return Array.from({ length: 12 }, (_, m) => {
    const days = daysOfMonth(clearness, m).filter((K) => K !== null);
    if (days.length < 10) return null;
    return {
      mean: mean(days),
      spread: standardDeviation(days),
      dullTenth: quantile(days, 0.1),
      clearTenth: quantile(days, 0.9),
    };
  });
}

function daysOfMonth<T>(days: readonly T[], month: number): T[] {
  const { fromDay, toDay } = monthSpan(month);
  return days.slice(fromDay, toDay);
}

/**
 * Likeness of a day to the day before: lag-one autocorrelation of the departures of daily clearness from the mean of
 * their month, all months together. 0 when days follow each other by chance.
 */
export function lagOneAutocorrelation(clearness: readonly (number | null)[]): number {
  const months = monthlyClearness(clearness);
  let products = 0;
  let squares = 0;
  let before: number | null = null;
  for (let day = 0; day < clearness.length; day++) {
    const K = clearness[day] ?? null;
    const month = months[monthOfHour(day * 24)] ?? null;
    const departure = K === null || month === null ? null : K - month.mean;
    if (departure !== null) squares += departure * departure;
    if (departure !== null && before !== null) products += departure * before;
    before = departure;
  }
  return squares > 0 ? products / squares : 0;
}

/** A run of days that brought less than their share. */
export interface DullRun {
  days: number;
  /** Day of the year, 0 to 364, on which it begins. */
  firstDay: number;
}

/**
 * The longest run of days that each brought less than a fraction of the mean day of their month. The year is taken as
 * a circle, so a run may go from December into January.
 *
 * @param dailyKWh 365 daily sums, in any unit
 * @param fractionOfMonthMean such as 0.5
 * @param months only runs that begin in these months, 0 to 11; all when left out
 */
export function longestDullRun(
  dailyKWh: ArrayLike<number>,
  fractionOfMonthMean: number,
  months?: readonly number[],
): DullRun {
  const all = Array.from(dailyKWh);
  const limit = Array.from({ length: 12 }, (_, m) => fractionOfMonthMean * mean(daysOfMonth(all, m)));
  const dull = all.map((kWh, day) => kWh < limit[monthOfHour(day * 24)]!);
  let longest: DullRun = { days: 0, firstDay: 0 };
  for (let day = 0; day < daysPerYear; day++) {
    if (!dull[day] || dull[(day + daysPerYear - 1) % daysPerYear]) continue;
    if (months && !months.includes(monthOfHour(day * 24))) continue;
    let days = 1;
    while (days < daysPerYear && dull[(day + days) % daysPerYear]) days++;
    if (days > longest.days) longest = { days, firstDay: day };
  }
  return longest;
}
