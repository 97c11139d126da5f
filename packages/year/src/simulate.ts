import type { Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { yearSummary } from './facts/year-summary.js';
import { settle } from './loop/settle.js';
import { preparePlant } from './prepare/prepare-plant.js';
import { PreparedCache } from './prepare/prepared-cache.js';
import { siteWeather } from './prepare/site-weather.js';
import { checkWeatherPlace } from './prepare/weather-place.js';
import type { YearResult } from './year-result.js';

/**
 * The settled year of a design.
 *
 * @param prepared what designs of the same place have in common; pass the same one to run them faster
 * @throws SiteError for values that do not fit together, WeatherError for weather that cannot be used
 */
export function simulateSite(site: Site, prepared: PreparedCache = new PreparedCache()): YearResult {
  return simulateWeather(site, siteWeather(site, prepared), prepared);
}

/** The settled year of a design under a given weather. */
export function simulateWeather(
  site: Site,
  weather: WeatherYear,
  prepared: PreparedCache = new PreparedCache(),
): YearResult {
  checkWeatherPlace(site, weather);
  const { plant, arrays, load, limits } = preparePlant(site, weather, prepared);
  const { ledger, settledAfterYears } = settle(plant);
  const year = { site, weather, arrays, limits, load, plant, ledger };
  return { ...year, summary: yearSummary(year, settledAfterYears) };
}
