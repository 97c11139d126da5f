import type { NamedFile, Site } from '@wintergap/site';
import { fromSite } from '@wintergap/site';
import {
  judgementOf,
  judgeWeather,
  type MonthlyMeans,
  makeYear,
  moveToElevation,
  RejectedWeatherError,
  readWeatherFile,
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
export function siteWeather(site: Site, prepared = new PreparedCache()): WeatherYear {
  const { place, weather } = site;
  return prepared.get('weather', [weather, place, site.name, site.snow.days], () => {
    const where = { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset };
    if ('months' in weather) {
      const means = monthlyMeans(weather.months);
      const made = fromSite(site, 'weather.months', () =>
        makeYear(means, { ...where, name: site.name, elevationM: place.elevation }, { seed: weather.seed }),
      );
      return { ...made, judgement: judgementOf(made.source, made.notices) };
    }
    return readYear(weather.file, site, prepared);
  });
}

/**
 * All the real years the site names: the one that `siteWeather` gives, then `otherYears`. One year when there are no
 * others.
 *
 * @throws WeatherError when a file is not a usable weather year
 */
export function siteWeatherYears(site: Site, prepared = new PreparedCache()): WeatherYear[] {
  const others = 'months' in site.weather ? [] : (site.weather.otherYears ?? []);
  return [siteWeather(site, prepared), ...others.map((file) => readYear(file, site, prepared))];
}

/** A file's year, judged. */
function readYear({ path }: NamedFile, site: Site, prepared: PreparedCache): WeatherYear {
  const { place, weather } = site;
  const where = sitePlace(site);
  const read = readWeatherFile(path, {
    latitudeDeg: place.latitude,
    longitudeDeg: place.longitude,
    utcOffsetH: place.utcOffset,
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
