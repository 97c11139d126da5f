import { hoursPerYear } from '@wintergap/ground';
import { longestDullRun } from '../make/clearness-statistics.js';
import type { Notice, Verdict, WeatherPlace, WeatherYear } from '../weather-year.js';
import { judgeWeather } from './judge-weather.js';
import { sumMonth } from './weather-sums.js';

/** One real year among several: what it brings, and whether to trust it. */
export interface YearLine {
  name: string;
  verdict: Verdict;
  /** The verdict in one line, or why the year cannot be read. */
  line: string;
  /** `null` for a year that cannot be read, as all that follows. */
  monthsKWhM2: number[] | null;
  sunKWhM2: number | null;
  meanAirC: number | null;
  /** Longest run of days that bring less than half the mean day of their month, and the day (0 to 364) it begins. */
  dullDays: number | null;
  dullFrom: number | null;
  /** Hours that were not measured but bridged or filled. */
  missingHours: number | null;
  notices: Notice[];
}

/**
 * The sums, the dullest days and the verdict of one year among many.
 *
 * @param site where the weather will be used, as for `judgeWeather`
 */
export function yearLine(name: string, weather: WeatherYear, site: WeatherPlace): YearLine {
  const { verdict, line, notices } = judgeWeather(weather, { site });
  const monthsKWhM2 = Array.from({ length: 12 }, (_, month) => sumMonth(weather, month).ghiKWhM2);
  const dailyWh = Float64Array.from({ length: hoursPerYear / 24 }, (_, day) => {
    let sum = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) sum += weather.ghiWm2[h]!;
    return sum;
  });
  const dull = longestDullRun(dailyWh, 0.5);
  return {
    name,
    verdict,
    line,
    monthsKWhM2,
    sunKWhM2: monthsKWhM2.reduce((sum, month) => sum + month, 0),
    meanAirC: weather.airC.reduce((sum, air) => sum + air, 0) / hoursPerYear,
    dullDays: dull.days,
    dullFrom: dull.firstDay,
    missingHours: weather.mended?.reduce((count, flag) => count + (flag > 0 ? 1 : 0), 0) ?? 0,
    notices,
  };
}

/** A year that cannot be read, with its reason. */
export function unreadableYear(name: string, reason: string): YearLine {
  const nothing = { monthsKWhM2: null, sunKWhM2: null, meanAirC: null, dullDays: null, dullFrom: null };
  const notices: Notice[] = [{ code: 'unreadable', level: 'error', text: reason }];
  return { name, verdict: 'rejected', line: reason, ...nothing, missingHours: null, notices };
}
