import { isUtf8 } from 'node:buffer';
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { WeatherError } from '../weather-error.js';
import type { WeatherPlace, WeatherYear } from '../weather-year.js';
import { readWeather } from './read-weather.js';

/**
 * Reads a weather file from disk. Text that is not UTF-8 is taken as ISO 8859-1, which older files use in their headers.
 *
 * @throws WeatherError also when the file cannot be opened
 */
export function readWeatherFile(path: string, place: WeatherPlace = {}): WeatherYear {
  const source = basename(path);
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new WeatherError(
      source,
      1,
      `cannot be opened (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
    );
  }
  return readWeather(bytes.toString(isUtf8(bytes) ? 'utf8' : 'latin1'), { source, place });
}
