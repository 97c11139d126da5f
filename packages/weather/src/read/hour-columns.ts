import { hourOfYear, hoursPerYear, hourText } from '@wintergap/ground';
import { WeatherError } from '../weather-error.js';
import type { Notice, WeatherPlace } from '../weather-year.js';

/** What a weather file may hold, in the units of `WeatherYear`. */
const columnNames = [
  'ghi',
  'dni',
  'dhi',
  'air',
  'wind',
  'snow depth',
  'precipitation',
  'albedo',
  'relative humidity',
  'pressure',
] as const;

export type ColumnName = (typeof columnNames)[number];

/** Hourly columns as read: placed by date, canonical units, NaN where the file has no value. */
export interface HourColumns {
  source: string;
  kind: 'epw' | 'tmy3' | 'table' | 'made';
  place: WeatherPlace;
  columns: Map<ColumnName, Float64Array>;
  /** Line of the file that holds an hour; 0 where no row does. */
  lineOfHour: Int32Array;
  leapRows: number;
  rows: number;
  lastLine: number;
  splitByErbs: boolean;
  notices: Notice[];
}

export function createHourColumns(
  source: string,
  kind: HourColumns['kind'],
  names: readonly ColumnName[],
): HourColumns {
  const columns = new Map<ColumnName, Float64Array>();
  for (const name of names) columns.set(name, new Float64Array(hoursPerYear).fill(Number.NaN));
  return {
    source,
    kind,
    place: {},
    columns,
    lineOfHour: new Int32Array(hoursPerYear),
    leapRows: 0,
    rows: 0,
    lastLine: 1,
    splitByErbs: false,
    notices: [],
  };
}

/**
 * Claims the hour of the year that a row is for. Month and day count from 1, `hour` is the start of the interval.
 *
 * @returns its index, or -1 for a row of 29 February, which is left out
 * @throws WeatherError when there is no such date or the hour already has a row
 */
export function claimHour(into: HourColumns, month: number, day: number, hour: number, line: number): number {
  const index = hourOfYear(month, day, hour);
  into.rows++;
  into.lastLine = line;
  if (index === 'leap day') {
    into.leapRows++;
    return -1;
  }
  if (index === 'no date') {
    throw new WeatherError(into.source, line, `month ${month}, day ${day}, hour from ${hour} is not on the calendar`);
  }
  const earlier = into.lineOfHour[index]!;
  if (earlier > 0) {
    throw new WeatherError(
      into.source,
      line,
      `the hour from ${hourText(index)} is already on line ${earlier}; one year of local standard time (no summer time) is expected`,
    );
  }
  into.lineOfHour[index] = line;
  return index;
}

/** The error for a field that should hold a number. */
export function notANumber(source: string, line: number, column: string, text: string): WeatherError {
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text;
  const hint = /^[+-]?\d+,\d+$/.test(text.trim()) ? ' (with a point, not a comma)' : '';
  return new WeatherError(source, line, `${column} is "${shown}", expected a number${hint}`);
}
