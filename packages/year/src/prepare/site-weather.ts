import { basename } from 'node:path';
import { OutOfRangeError } from '@wintergap/ground';
import type { NamedFile, Site } from '@wintergap/site';
import { fromSite } from '@wintergap/site';
import {
  type ClockMend,
  judgementOf,
  judgeWeather,
  type MadePlace,
  type MonthlyMeans,
  type MonthSpread,
  makeYear,
  moveToElevation,
  type ReadSettings,
  RejectedWeatherError,
  readWeatherFile,
  readWeatherYearsFile,
  spreadOfMadeYears,
  WeatherError,
  type WeatherPlace,
  type WeatherYear,
} from '@wintergap/weather';
import { siteSun } from './prepare-outdoors.js';
import { PreparedCache } from './prepared-cache.js';

/**
 * The weather of a site: the file it names, or a year made from its monthly means. The same object every time while
 * `prepared` keeps it.
 *
 * @throws WeatherError when the file is not a usable weather year, RejectedWeatherError when it cannot be trusted and
 * the site does not accept it all the same
 * @throws SiteError when no year can have the monthly means
 */
export function siteWeather(site: Site, prepared: PreparedCache = new PreparedCache()): WeatherYear {
  const { place, weather } = site;
  return prepared.get('weather', [weather, place, site.name, site.snow.days], () => {
    return 'months' in weather ? madeWeather(site, weather.seed, 0) : readYear(weather.file, site, prepared);
  });
}

/**
 * A year made from the site's monthly means, with a chance of its own.
 *
 * @param spread of the months about their means, in multiples of a measured one; 0 for none
 * @throws SiteError when no year can have the monthly means, or the site has none
 */
export function madeWeather(site: Site, seed: number, spread: number): WeatherYear {
  const made = fromSite(site, 'weather.months', () => makeYear(meansOf(site), placeOf(site), { seed, spread }));
  return { ...made, judgement: judgementOf(made.source, made.notices) };
}

/**
 * What a spread of the months comes to in years made from the site's monthly means.
 *
 * @param spread in multiples of a measured one
 * @throws SiteError when no year can have the monthly means, or the site has none
 */
export const madeSpread = (site: Site, spread: number): MonthSpread =>
  fromSite(site, 'weather.months', () => spreadOfMadeYears(meansOf(site), placeOf(site), spread));

const placeOf = ({ name, place }: Site): MadePlace => ({
  latitudeDeg: place.latitude,
  longitudeDeg: place.longitude,
  utcOffsetH: place.utcOffset,
  name,
  elevationM: place.elevation,
});

function meansOf({ weather }: Site): MonthlyMeans {
  if ('months' in weather) return monthlyMeans(weather.months);
  throw new OutOfRangeError('made years need weather from monthly means, got a file');
}

/**
 * All the real years the site names: the one that `siteWeather` gives, then `otherYears`. One year when there are no
 * others.
 *
 * @throws WeatherError when a file is not a usable weather year
 */
export function siteWeatherYears(site: Site, prepared: PreparedCache = new PreparedCache()): WeatherYear[] {
  const others = 'months' in site.weather ? [] : (site.weather.otherYears ?? []);
  return [siteWeather(site, prepared), ...others.map((file) => readYear(file, site, prepared))];
}

/** A file's year, judged. */
function readYear(file: NamedFile, site: Site, prepared: PreparedCache): WeatherYear {
  const { place, weather } = site;
  const where = sitePlace(site);
  const read = yearOfFile(file, {
    place: { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset },
    clock: clockOf(site),
  });
  const judgement = judgeWeather(read, {
    site: where,
    sun: siteSun(site, prepared),
    snowIsGiven: site.snow.days !== undefined,
  });
  const accepted = 'accepted' in weather && weather.accepted;
  if (judgement.verdict === 'rejected' && !accepted) throw new RejectedWeatherError(judgement);
  const { verdict, line, notices } = judgement;
  const year: WeatherYear = { ...read, judgement: { verdict, line, notices } };
  const fileElevation = year.place.elevationM;
  const moves = 'moveTemperature' in weather && weather.moveTemperature && fileElevation !== undefined;
  return moves ? moveToElevation(year, fileElevation, place.elevation) : year;
}

function yearOfFile({ path, calendarYear }: NamedFile, settings: ReadSettings): WeatherYear {
  if (calendarYear === undefined) return readWeatherFile(path, settings);
  const years = readWeatherYearsFile(path, settings);
  const found = years.find((year) => year.calendarYear === calendarYear);
  if (!found) throw new WeatherError(basename(path), 1, `no rows of ${calendarYear}`);
  if (found.weather === null) throw found.error;
  return found.weather;
}

function clockOf({ weather }: Site): ClockMend | undefined {
  if ('months' in weather || !weather.clock) return undefined;
  const { shift, summerTime } = weather.clock;
  return { shiftH: shift, ...(summerTime && { summerTime }) };
}

/** Where the weather is used. */
export function sitePlace({ place }: Site): WeatherPlace {
  return {
    latitudeDeg: place.latitude,
    longitudeDeg: place.longitude,
    utcOffsetH: place.utcOffset,
    elevationM: place.elevation,
  };
}

type SiteMonths = Extract<Site['weather'], { months: unknown }>['months'];

function monthlyMeans({ irradiation, clearness, air, airMin, airMax, wind, snowyDays }: SiteMonths): MonthlyMeans {
  return {
    sun: irradiation
      ? { kind: 'irradiation', kWhPerM2Day: irradiation }
      : { kind: 'clearness', clearness: clearness ?? [] },
    airC: air,
    ...(airMin && airMax && { dailyExtremes: { minC: airMin, maxC: airMax } }),
    ...(wind && { windMs: wind }),
    ...(snowyDays && { snow: { fallDays: snowyDays } }),
  };
}
