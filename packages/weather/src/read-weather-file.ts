import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { readWeather } from './read-weather.js';
import { WeatherError } from './weather-error.js';
import type { WeatherPlace, WeatherYear } from './weather-year.js';

/**
 * Reads a weather file from disk. Text that is not UTF-8 is taken as ISO 8859-1, which older files use in their headers.
 *
 * @throws WeatherError also when the file cannot be opened
 */
export function readWeatherFile(path: string, place: WeatherPlace = {}): WeatherYear {
  const source = basename(path);
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new WeatherError(
      source,
      1,
      `cannot be opened (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
    );
  }
  return readWeather(decode(bytes), { source, place });
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('latin1').decode(bytes);
  }
}
