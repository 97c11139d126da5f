import { hoursPerYear } from '@wintergap/ground';
import { WeatherError } from '../weather-error.js';
import type { WeatherYear } from '../weather-year.js';
import { finishYear } from './finish-year.js';
import { daysToHours } from './formats/days-to-hours.js';
import { weatherFormats } from './formats/formats.js';
import type { HourColumns } from './hour-columns.js';
import { summerHours } from './mend/clock-mend.js';
import type { ReadSettings } from './read-settings.js';
import { oneYear, type StartShelf, type YearShelf, yearsApart } from './year-shelf.js';

/**
 * Reads the text of a weather file of one year: EPW, TMY3, the plain table or a table of the POWER service, told apart by
 * their first lines.
 *
 * @param options.source name of the file, for messages
 * @throws WeatherError with the line of the file, for any text that is not a usable weather year
 */
export function readWeather(text: string, options: ReadSettings & { source: string }): WeatherYear {
  const [hours] = shelve(text, options, oneYear).years().values();
  return finish(hours!, options);
}

/** A calendar year of a file of several: its weather, or why it cannot be used. */
export type YearOfFile =
  | { calendarYear: number; rows: number; weather: WeatherYear }
  | { calendarYear: number; rows: number; weather: null; error: WeatherError };

/** A year with fewer rows than this is a beginning or an end of a table and not meant as a year. */
const fewestRows = hoursPerYear * 0.9;

/**
 * Reads the text of a weather file that holds several calendar years, in one pass; each year is judged on its own. Years
 * that the table only begins or ends with are left out, unless there is no other.
 *
 * @throws WeatherError when the file as a whole cannot be read
 */
export function readWeatherYears(text: string, options: ReadSettings & { source: string }): YearOfFile[] {
  const shelved = [...shelve(text, options, yearsApart).years()];
  const rowsOf = (hours: HourColumns): number => (hours.isDaily ? hours.rows * 24 : hours.rows);
  const whole = shelved.filter(([, hours]) => rowsOf(hours) >= fewestRows);
  return (whole.length > 0 ? whole : shelved).map(([calendarYear, hours]) => {
    const rows = hours.rows;
    try {
      return { calendarYear, rows, weather: finish(hours, options) };
    } catch (error) {
      if (error instanceof WeatherError) return { calendarYear, rows, weather: null, error };
      throw error;
    }
  });
}

function finish(hours: HourColumns, settings: ReadSettings): WeatherYear {
  return finishYear(hours.isDaily ? daysToHours(hours, { ...settings.place, ...hours.place }) : hours, settings);
}

function shelve(text: string, options: ReadSettings & { source: string }, start: StartShelf): YearShelf {
  const { source, clock, place = {} } = options;
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  const clean = body.includes('\r') ? body.replace(/\r\n?/g, '\n') : body;
  if (clean.trim() === '') throw new WeatherError(source, 1, 'the file is empty');
  const format = weatherFormats.find(({ recognises }) => recognises(clean))!;
  return format.read(clean, source, { start, summer: clock ? summerHours(clock) : null }, place);
}
