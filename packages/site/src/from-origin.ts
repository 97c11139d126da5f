import { dirname, resolve } from 'node:path';
import type { Site, SiteOrigin } from './document/origin.js';
import type { NamedFile } from './named-file.js';
import type { SiteValues } from './schema/design.js';
import { weatherYearsOf } from './weather/weather-years.js';

/** A design with its origin, and the files it names found from the site file's folder. */
export function fromOrigin(values: SiteValues, origin: SiteOrigin): Site {
  const folder = dirname(origin.file);
  const { weather, measuredLoad } = values;
  return {
    ...values,
    weather: weatherFrom(weather, folder),
    ...(measuredLoad && { measuredLoad: { ...measuredLoad, file: inFolder(folder, measuredLoad.file) } }),
    origin,
  };
}

function weatherFrom(weather: SiteValues['weather'], folder: string): SiteValues['weather'] {
  if ('months' in weather) return weather;
  if ('years' in weather) {
    const [file = inFolder(folder, weather.file), ...otherYears] = weatherYearsOf(
      weather.years,
      weather.leaveOut,
      folder,
    );
    return { ...weather, file, otherYears };
  }
  return {
    ...weather,
    file: inFolder(folder, weather.file),
    otherYears: weather.otherYears?.map((file) => inFolder(folder, file)),
  };
}

/** The same file with its path counted from a folder. */
const inFolder = (folder: string, { written }: NamedFile): NamedFile => ({
  written,
  path: resolve(folder, written),
});
