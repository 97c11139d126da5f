import { WeatherError } from '../weather-error.js';
import type { WeatherPlace, WeatherYear } from '../weather-year.js';
import { finishYear } from './finish-year.js';
import { readEpw } from './read-epw.js';
import { readTable } from './read-table.js';
import { readTmy3 } from './read-tmy3.js';

/**
 * Reads the text of a weather file: EPW, TMY3 or the plain table, told apart by their first lines.
 *
 * @param options.source name of the file, for messages
 * @param options.place what is known of the place from elsewhere; the file's own statements win
 * @throws WeatherError with the line of the file, for any text that is not a usable weather year
 */
export function readWeather(text: string, options: { source: string; place?: WeatherPlace }): WeatherYear {
  const { source, place = {} } = options;
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  const clean = body.includes('\r') ? body.replace(/\r\n?/g, '\n') : body;
  if (clean.trim() === '') throw new WeatherError(source, 1, 'the file is empty');
  if (/^LOCATION\s*,/i.test(clean)) return finishYear(readEpw(clean, source), place);
  if (/^[^\n]*\n\s*"?Date \(MM\/DD\/YYYY\)/i.test(clean)) return finishYear(readTmy3(clean, source), place);
  return finishYear(readTable(clean, source), place);
}
