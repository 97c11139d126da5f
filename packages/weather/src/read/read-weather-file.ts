import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { InputFileError, readInputText } from '@wintergap/ground';
import { WeatherError } from '../weather-error.js';
import type { WeatherYear } from '../weather-year.js';
import type { ReadSettings } from './read-settings.js';
import { readWeather, readWeatherYears, type YearOfFile } from './read-weather.js';

/**
 * Reads a weather file of one year from disk. Text that is not UTF-8 is taken as ISO 8859-1, which older files use in
 * their headers.
 *
 * @throws WeatherError also when the file cannot be opened
 */
export function readWeatherFile(path: string, settings: ReadSettings = {}): WeatherYear {
  return readWeather(textOf(path), { ...settings, source: basename(path), path });
}

/** The file of several years that was read last: its years are asked for one by one. */
let latest: { key: string; years: YearOfFile[] } | null = null;

/**
 * Reads all calendar years of a weather file from disk, in one pass. The years of the latest file are kept until another
 * is read or the file changes; they are not to be written to.
 *
 * @throws WeatherError when the file cannot be opened or read as a whole
 */
export function readWeatherYearsFile(path: string, settings: ReadSettings = {}): YearOfFile[] {
  const key = JSON.stringify([path, settings, stampOf(path)]);
  if (latest?.key !== key) {
    latest = { key, years: readWeatherYears(textOf(path), { ...settings, source: basename(path), path }) };
  }
  return latest.years;
}

function stampOf(path: string): number[] {
  try {
    const { mtimeMs, size } = statSync(path);
    return [mtimeMs, size];
  } catch {
    return [];
  }
}

function textOf(path: string): string {
  try {
    return readInputText(path, 'latin1');
  } catch (error) {
    if (error instanceof InputFileError) throw new WeatherError(basename(path), error.line, error.message);
    throw error;
  }
}
