import type { Site } from '@wintergap/site';
import { assertCloses, createLedger, type Ledger } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import { yearSummary } from './facts/year-summary.js';
import { settle } from './loop/settle.js';
import { measuredLoadOf } from './prepare/measured-load.js';
import { preparePlant } from './prepare/prepare-plant.js';
import { PreparedCache } from './prepare/prepared-cache.js';
import { limitsUnder } from './prepare/site-limits.js';
import { siteWeather } from './prepare/site-weather.js';
import { checkWeatherPlace } from './prepare/weather-place.js';
import type { YearInputs } from './year-inputs.js';
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
  return simulateInputs(site, { weather, measured: measuredLoadOf(site, prepared) }, prepared);
}

/** The settled year of a design from what was read already: no file is opened. */
export function simulateInputs(
  site: Site,
  inputs: YearInputs,
  prepared: PreparedCache = new PreparedCache(),
): YearResult {
  const year = settledYear(site, inputs, prepared, createLedger());
  const limits = limitsUnder(site, inputs.weather, year.plant.bank, prepared);
  return { ...year, limits, summary: yearSummary(year, limits) };
}

/**
 * As `simulateInputs`, without limits and summary: for those who run many years and keep a few figures of each.
 *
 * @param ledger filled anew; whoever gives the same one again has read the year before
 * @throws as `simulateInputs`, and Error when the ledger does not close
 */
export function simulateBare(
  site: Site,
  inputs: YearInputs,
  prepared: PreparedCache,
  ledger: Ledger = createLedger(),
): BareYear {
  const year = settledYear(site, inputs, prepared, ledger);
  assertCloses(ledger);
  return year;
}

function settledYear(site: Site, inputs: YearInputs, prepared: PreparedCache, ledger: Ledger): BareYear {
  const { weather } = inputs;
  checkWeatherPlace(site, weather);
  const { plant, arrays, load } = preparePlant(site, inputs, prepared);
  return { site, weather, arrays, load, plant, ledger, settledAfterYears: settle(plant, ledger).settledAfterYears };
}
