import type { Site } from '@wintergap/site';
import { PreparedCache, simulateWeather } from '@wintergap/year';
import { type YearFigures, yearFigures } from '../year-figures.js';
import type { CommonYearsWish } from './common-years.js';
import { yearsOfSites } from './years-of-sites.js';

/** What a thread is given once, at its start; plain data. */
export interface DesignRunnerStart {
  sites: readonly Site[];
  asked: CommonYearsWish;
}

/**
 * Prepares the common years of several designs. What a design does in a year depends on the design, the seed and the
 * number of the year only, so years can be run in any order and on any number of threads.
 *
 * @throws SiteError or WeatherError when a weather file cannot be used
 */
export function createDesignRunner({ sites, asked }: DesignRunnerStart): (yearIndex: number) => YearFigures[] {
  const weatherOf = sites.map(yearsOfSites(asked));
  const prepared = new PreparedCache();
  return (yearIndex) =>
    sites.map((site, d) => yearFigures(simulateWeather(site, weatherOf[d]!.weatherOf(yearIndex), prepared)));
}
