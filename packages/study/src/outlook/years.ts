import type { Site } from '@wintergap/site';
import { createResampler, type MonthSpread, type WeatherYear } from '@wintergap/weather';
import { madeSpread, madeWeather, PreparedCache, siteWeatherYears } from '@wintergap/year';
import { figuresUnder, type YearFigures } from '../year-figures.js';

/** Which weather years a design is put through. */
export type OutlookWeather =
  /** The real years that the site names, as they are. */
  | { kind: 'real'; years: number }
  /** Years put together from blocks of days of the site's years. */
  | { kind: 'resampled'; from: number; years: number; seed: number; spread: number }
  /** Years made from the site's twelve monthly means, each with its own chance. */
  | { kind: 'made'; years: number; seed: number; spread: number };

export interface OutlookWish {
  /** Left out: all the site's real years if it names several, otherwise 100. */
  years?: number;
  seed?: number;
  /**
   * Spread of the months' sunshine between the years, in multiples of what several real years show, or of a measured
   * one; 1 when left out, 0 for none but what days drawn anew bring by themselves.
   */
  spread?: number;
}

export const usualYears = 100;

/**
 * The weather years that suit a site: its real years when it names several and no other number of years is asked for,
 * years from its monthly means when it has no file, otherwise years resampled from all it names.
 */
export function outlookWeather(site: Site, { years, seed = 1, spread }: OutlookWish = {}): OutlookWeather {
  const { weather } = site;
  const made = { years: years ?? usualYears, seed, spread: spread ?? 1 };
  if ('months' in weather) return { kind: 'made', ...made };
  const from = 1 + (weather.otherYears?.length ?? 0);
  if (from > 1 && years === undefined && spread === undefined) return { kind: 'real', years: from };
  return { kind: 'resampled', from, ...made };
}

/** One design and the weather years it is to meet; plain data, so that it can be handed to a worker. */
export interface OutlookTask {
  site: Site;
  weather: OutlookWeather;
}

/** How much of what was prepared is kept: the sun of the place is shared, the rest belongs to one year. */
const mostKept = 8;

/**
 * Prepares the years of a task. Each depends on the task and on its number only, so they can be run in any order and on
 * any number of workers.
 *
 * @throws SiteError or WeatherError when a file cannot be used
 */
export function createYearRunner({ site, weather }: OutlookTask): (yearIndex: number) => YearFigures {
  const prepared = new PreparedCache(mostKept);
  const { weatherOf } = createWeatherYears(site, weather);
  return (yearIndex) => figuresUnder(site, weatherOf(yearIndex), prepared);
}

/** Seeds of made years are this far apart, so that no two seeds share a year. */
const mostYears = 2 ** 20;

/** The weather years of a site. */
export interface WeatherYears {
  /** The weather of a year by its number from 0, made anew each time. */
  weatherOf(yearIndex: number): WeatherYear;
  /** The spread that the months were given; `null` for real years and for none. */
  spread: MonthSpread | null;
}

/** @throws SiteError or WeatherError when a file or the monthly means cannot be used */
export const createWeatherYears = (
  site: Site,
  weather: OutlookWeather,
  prepared: PreparedCache = new PreparedCache(),
): WeatherYears => weatherYearsFrom(site, weather, () => siteWeatherYears(site, prepared));

/**
 * The same from real years that were read already.
 *
 * @param real all that the site names; not asked for where its years are made from monthly means
 */
export function weatherYearsFrom(
  site: Site,
  weather: OutlookWeather,
  real: () => readonly WeatherYear[],
): WeatherYears {
  switch (weather.kind) {
    case 'real': {
      const years = real();
      return { weatherOf: (yearIndex) => years[yearIndex]!, spread: null };
    }
    case 'resampled': {
      const { yearOf, spread } = createResampler(real(), weather);
      return { weatherOf: yearOf, spread };
    }
    case 'made': {
      const { seed, spread } = weather;
      return {
        weatherOf: (yearIndex) => madeWeather(site, seed * mostYears + yearIndex, spread),
        spread: spread === 0 ? null : madeSpread(site, spread),
      };
    }
  }
}
