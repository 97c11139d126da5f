import { OutOfRangeError } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import type { MonthSpread, WeatherYear } from '@wintergap/weather';
import { PreparedCache, siteWeather } from '@wintergap/year';
import { createWeatherYears, type OutlookWeather, outlookWeather, weatherYearsFrom } from '../outlook/years.js';

/** Weather years that every design of a comparison meets, the same for each. */
export interface CommonYears {
  /** How many; `weatherOf` takes 0 to `count` - 1. */
  count: number;
  /** `real`: as the site's files have them; `resampled`: from days of its files; `made`: from its twelve monthly means. */
  kind: OutlookWeather['kind'];
  /** The spread of sunshine that the months were given, and where it is from; `null` for none. */
  spread: MonthSpread | null;
  /** One year's weather, made when asked for; the same object when asked for again in turn. */
  weatherOf(index: number): WeatherYear;
}

export interface CommonYearsWish {
  /** 25 when left out, or all the site's real years if it names several; 1 is the year of its file, or of its means, alone. */
  years?: number;
  seed?: number;
  /** As in an outlook: 1 when left out, 0 for none. */
  spread?: number;
}

export const usualCommonYears = 25;

/**
 * The weather years for a comparison of designs at one site. They are those an outlook of the site begins with, so
 * figures of both agree. Year `i` depends on the site's weather, the seed and `i` alone.
 *
 * @param prepared keeps the years for whoever asks for the same ones, or for more or fewer of them, and may hold
 * the site's weather as it was read before
 * @throws SiteError or WeatherError for weather that cannot be used, OutOfRangeError for numbers out of range
 */
export function commonYears(
  site: Site,
  wish: CommonYearsWish = {},
  prepared: PreparedCache = new PreparedCache(),
): CommonYears {
  const months = 'months' in site.weather;
  if (wish.years === 1) {
    const only = siteWeather(site, prepared);
    return { count: 1, kind: months ? 'made' : 'real', spread: null, weatherOf: numbered(1, () => only) };
  }
  const weather = commonWeather(site, wish);
  const { years: count, ...asked } = weather;
  const { place, name, snow } = site;
  const { weatherOf, spread } = prepared.lasting('years', [site.weather, place, name, snow.days, asked], () => {
    const years = createWeatherYears(site, weather, prepared);
    return { ...years, weatherOf: kept(years.weatherOf) };
  });
  return { count, kind: weather.kind, spread, weatherOf: numbered(count, weatherOf) };
}

/** The real years of a site, or where it has none the one from its means; read when asked for. */
export interface RealYears {
  /** The one that `year` tells of. */
  own(): WeatherYear;
  /** That one and the site's other years. */
  all(): readonly WeatherYear[];
}

/** The same from years that were read already: no file is opened. */
export function commonYearsFrom(site: Site, real: RealYears, wish: CommonYearsWish = {}): CommonYears {
  if (wish.years === 1) {
    const kind = 'months' in site.weather ? 'made' : 'real';
    return { count: 1, kind, spread: null, weatherOf: numbered(1, () => real.own()) };
  }
  const weather = commonWeather(site, wish);
  const { weatherOf, spread } = weatherYearsFrom(site, weather, real.all);
  return { count: weather.years, kind: weather.kind, spread, weatherOf: numbered(weather.years, kept(weatherOf)) };
}

/** Which years these are and how many, told without making any: for a number of years other than one. */
export function commonWeather(site: Site, wish: CommonYearsWish = {}): OutlookWeather {
  const several = 'otherYears' in site.weather && (site.weather.otherYears?.length ?? 0) > 0;
  return outlookWeather(site, several ? wish : { years: usualCommonYears, ...wish });
}

/**
 * The first years are kept, as many as a comparison or a sizing usually has. Of the others the latest is, which all designs
 * meet in turn: however many years there are, they cost no more memory.
 */
const yearsKept = 40;

function kept(make: (index: number) => WeatherYear): (index: number) => WeatherYear {
  const first: WeatherYear[] = [];
  let latest: { index: number; year: WeatherYear } | null = null;
  return (index) => {
    if (index < yearsKept) {
      first[index] ??= make(index);
      return first[index];
    }
    if (latest?.index !== index) latest = { index, year: make(index) };
    return latest.year;
  };
}

function numbered(count: number, weatherOf: (index: number) => WeatherYear): (index: number) => WeatherYear {
  return (index) => {
    if (Number.isInteger(index) && index >= 0 && index < count) return weatherOf(index);
    throw new OutOfRangeError(`the common years are numbered 0 to ${count - 1}, got ${index}`);
  };
}
