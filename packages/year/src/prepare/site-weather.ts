import { basename } from 'node:path';
import type { NamedFile, Site } from '@wintergap/site';
import {
  type ClockMend,
  judgeWeather,
  moveToElevation,
  type ReadSettings,
  RejectedWeatherError,
  readWeatherFile,
  readWeatherYearsFile,
  WeatherError,
  type WeatherYear,
} from '@wintergap/weather';
import { madeWeather } from './made-weather.js';
import { siteSun } from './prepare-outdoors.js';
import { PreparedCache } from './prepared-cache.js';
import { sitePlace } from './site-place.js';

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
  return prepared.lasting('weather', [weather, place, site.name, site.snow.days], () => {
    return 'months' in weather ? madeWeather(site, weather.seed, 0) : readYear(weather.file, site, prepared);
  });
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
