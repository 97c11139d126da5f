import { OutOfRangeError } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import { type Anomaly, createResampler, type WeatherYear } from '@wintergap/weather';
import { PreparedCache, simulateWeather, siteWeather, siteWeatherYears } from '@wintergap/year';
import { type YearFigures, yearFigures } from '../year-figures.js';

/** Which weather years a design is put through. */
export type OutlookWeather =
  /** The real years that the site names, as they are. */
  | { kind: 'real'; years: number }
  /** Years put together from blocks of days of the site's years. */
  | { kind: 'resampled'; from: number; years: number; seed: number; anomaly?: Anomaly }
  /** Years made from the site's twelve monthly means, each with its own chance. */
  | { kind: 'made'; years: number; seed: number };

export interface OutlookWish {
  /** Left out: all the site's real years if it names several, otherwise 100. */
  years?: number;
  seed?: number;
  /** Spread between years added to resampled ones. */
  anomaly?: Anomaly;
}

export const usualYears = 100;

/**
 * The weather years that suit a site: its real years when it names several and no other number of years is asked for,
 * years from its monthly means when it has no file, otherwise years resampled from all it names.
 */
export function outlookWeather(site: Site, { years, seed = 1, anomaly }: OutlookWish = {}): OutlookWeather {
  const { weather } = site;
  if ('months' in weather) {
    if (anomaly) throw new OutOfRangeError('a spread can be added to weather from files only, not to monthly means');
    return { kind: 'made', years: years ?? usualYears, seed };
  }
  const from = 1 + (weather.otherYears?.length ?? 0);
  if (from > 1 && years === undefined && !anomaly) return { kind: 'real', years: from };
  return { kind: 'resampled', from, years: years ?? usualYears, seed, ...(anomaly && { anomaly }) };
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
  const weatherOf = createWeatherYears(site, weather);
  return (yearIndex) => yearFigures(simulateWeather(site, weatherOf(yearIndex), prepared));
}

/** Seeds of made years are this far apart, so that no two seeds share a year. */
const mostYears = 2 ** 20;

/** The weather of a site's years, by their number from 0. */
export function createWeatherYears(site: Site, weather: OutlookWeather): (yearIndex: number) => WeatherYear {
  switch (weather.kind) {
    case 'real': {
      const years = siteWeatherYears(site);
      return (yearIndex) => years[yearIndex]!;
    }
    case 'resampled': {
      const { seed, anomaly } = weather;
      return createResampler(siteWeatherYears(site), { seed, ...(anomaly && { anomaly }) });
    }
    case 'made': {
      const means = site.weather;
      if (!('months' in means)) throw new OutOfRangeError('made years need weather from monthly means');
      return (yearIndex) => {
        const seed = weather.seed * mostYears + yearIndex;
        const year = siteWeather({ ...site, weather: { ...means, seed } }, new PreparedCache(1));
        return { ...year, source: `${year.source}, seed ${seed}` };
      };
    }
  }
}
