import type { WeatherJudgement, WeatherPlace, WeatherYear } from '../weather-year.js';
import type { Closure } from './check-closure.js';
import type { Timing } from './check-timing.js';
import { judgeWeather } from './judge-weather.js';
import { sumMonth, sumYear, type WeatherSums } from './weather-sums.js';

/** What a weather year holds and whether to trust it. */
export interface WeatherReport extends WeatherJudgement {
  source: string;
  kind: WeatherYear['kind'];
  place: WeatherPlace;
  year: WeatherSums;
  months: WeatherSums[];
  /** `null` when the place is not known well enough to compute the sun. */
  closure: Closure | null;
  timing: Timing | null;
}

/**
 * Sums a weather year up and judges it.
 *
 * @param site where the weather will be used; its latitude, longitude and offset stand in where the file has none
 */
export function examineWeather(weather: WeatherYear, site: WeatherPlace = {}): WeatherReport {
  return {
    source: weather.source,
    kind: weather.kind,
    place: { ...site, ...weather.place },
    year: sumYear(weather),
    months: Array.from({ length: 12 }, (_, month) => sumMonth(weather, month)),
    ...judgeWeather(weather, { site }),
  };
}
