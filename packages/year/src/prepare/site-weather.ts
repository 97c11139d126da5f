import type { NamedFile, Site } from '@wintergap/site';
import { fromSite } from '@wintergap/site';
import { type MonthlyMeans, makeYear, moveToElevation, readWeatherFile, type WeatherYear } from '@wintergap/weather';
import { PreparedCache } from './prepared-cache.js';

/**
 * The weather of a site: the file it names, or a year made from its monthly means. The same object every time while
 * `prepared` keeps it.
 *
 * @throws WeatherError when the file is not a usable weather year
 * @throws SiteError when no year can have the monthly means
 */
export function siteWeather(site: Site, prepared = new PreparedCache()): WeatherYear {
  const { place, weather } = site;
  return prepared.get('weather', [weather, place, site.name], () => {
    const where = { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset };
    if ('months' in weather) {
      const means = monthlyMeans(weather.months);
      return fromSite(site, 'weather.months', () =>
        makeYear(means, { ...where, name: site.name, elevationM: place.elevation }, { seed: weather.seed }),
      );
    }
    return readYear(weather.file, site);
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
  return [siteWeather(site, prepared), ...others.map((file) => readYear(file, site))];
}

function readYear({ path }: NamedFile, { place, weather }: Site): WeatherYear {
  const where = { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset };
  const year = readWeatherFile(path, where);
  const fileElevation = year.place.elevationM;
  const moves = 'moveTemperature' in weather && weather.moveTemperature && fileElevation !== undefined;
  return moves ? moveToElevation(year, fileElevation, place.elevation) : year;
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
