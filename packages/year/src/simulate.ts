import type { Site } from '@wintergap/site';
import { assertCloses, createLedger, type Ledger } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import { yearSummary } from './facts/year-summary.js';
import { settle } from './loop/settle.js';
import { preparePlant } from './prepare/prepare-plant.js';
import { PreparedCache } from './prepare/prepared-cache.js';
import { limitsUnder } from './prepare/site-limits.js';
import { siteWeather } from './prepare/site-weather.js';
import { checkWeatherPlace } from './prepare/weather-place.js';
import type { BareYear, YearResult } from './year-result.js';

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
  const year = settledYear(site, weather, prepared, createLedger());
  const limits = limitsUnder(site, weather, year.plant.bank, prepared);
  return { ...year, limits, summary: yearSummary(year, limits) };
}

/**
 * As `simulateWeather`, without limits and summary: for those who run many years and keep a few figures of each.
 *
 * @param ledger filled anew; whoever gives the same one again has read the year before
 * @throws as `simulateWeather`, and Error when the ledger does not close
 */
export function simulateBare(
  site: Site,
  weather: WeatherYear,
  prepared: PreparedCache,
  ledger: Ledger = createLedger(),
): BareYear {
  const year = settledYear(site, weather, prepared, ledger);
  assertCloses(ledger);
  return year;
}

function settledYear(site: Site, weather: WeatherYear, prepared: PreparedCache, ledger: Ledger): BareYear {
  checkWeatherPlace(site, weather);
  const { plant, arrays, load } = preparePlant(site, weather, prepared);
  return { site, weather, arrays, load, plant, ledger, settledAfterYears: settle(plant, ledger).settledAfterYears };
}
