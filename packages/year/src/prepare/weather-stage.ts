import { dirname, resolve } from 'node:path';
import type { Site } from '@wintergap/site';
import { fromSite } from '@wintergap/site';
import { type MonthlyMeans, makeYear, moveToElevation, readWeatherFile, type WeatherYear } from '@wintergap/weather';
import type { StageCache } from './stage-cache.js';

/**
 * The weather of a site: the file it names, a relative path counting from the site file's folder, or a year made from
 * its monthly means.
 *
 * @throws WeatherError when the file is not a usable weather year
 * @throws SiteError when no year can have the monthly means
 */
export function siteWeather(site: Site, siteFile: string, stages: StageCache): WeatherYear {
  const { place, weather } = site;
  return stages.get('weather', { weather, place, siteFile }, () => {
    const where = { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset };
    if ('months' in weather) {
      const means = monthlyMeans(weather.months);
      return fromSite(siteFile, 'weather.months', () =>
        makeYear(means, { ...where, name: site.name, elevationM: place.elevation }, { seed: weather.seed }),
      );
    }
    return readYear(weather.file, site, siteFile);
  });
}

/**
 * All the real years the site names: the one that `siteWeather` gives, then `otherYears`. One year when there are no
 * others.
 *
 * @throws WeatherError when a file is not a usable weather year
 */
export function siteWeatherYears(site: Site, siteFile: string, stages: StageCache): WeatherYear[] {
  const others = 'months' in site.weather ? [] : (site.weather.otherYears ?? []);
  return [siteWeather(site, siteFile, stages), ...others.map((file) => readYear(file, site, siteFile))];
}

function readYear(file: string, { place, weather }: Site, siteFile: string): WeatherYear {
  const where = { latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset };
  const year = readWeatherFile(resolve(dirname(siteFile), file), where);
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
