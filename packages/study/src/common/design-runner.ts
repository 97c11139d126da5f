import type { Site } from '@wintergap/site';
import { PreparedCache, simulateWeather } from '@wintergap/year';
import { type YearFigures, yearFigures } from '../year-figures.js';
import { type CommonYears, type CommonYearsWish, commonYears } from './common-years.js';

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
  // A variant may stand elsewhere or under other weather: designs share made years as far as these are the same.
  const weathers = new Map<string, CommonYears>();
  const weatherOf = sites.map((site) => {
    const key = weatherKey(site);
    const known = weathers.get(key);
    if (known) return known;
    const made = commonYears(site, asked);
    weathers.set(key, made);
    return made;
  });
  const prepared = new PreparedCache();
  return (yearIndex) =>
    sites.map((site, d) => yearFigures(simulateWeather(site, weatherOf[d]!.weatherOf(yearIndex), prepared)));
}

const weatherKey = ({ weather, place, snow, name }: Site): string => JSON.stringify([weather, place, snow, name]);
