import { hourOfYear, hoursPerYear, hourText } from '@wintergap/ground';
import { WeatherError } from '../weather-error.js';
import type { Notice, WeatherPlace, WeatherYear } from '../weather-year.js';
import type { SummerHours } from './mend/clock-mend.js';

/** What a weather file may hold, in the units of `WeatherYear`. */
const columnNames = [
  'ghi',
  'dni',
  'dhi',
  'air',
  'air min',
  'air max',
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
  kind: WeatherYear['kind'];
  place: WeatherPlace;
  columns: Map<ColumnName, Float64Array>;
  /** Line of the file that holds an hour; 0 where no row does. */
  lineOfHour: Int32Array;
  leapRows: number;
  /** Rows left out because summer time names their hour twice. */
  doubledRows: number;
  /** Hours in which the clock of the file is an hour ahead; `null` for standard time all year. */
  summer: SummerHours | null;
  /** Calendar year of the first row, to tell several years in a file from an hour named twice; 0 where rows name none. */
  firstYear: number;
  /** Sums of days and not hours: told apart by the reader, turned into hours by `daysToHours`. */
  isDaily: boolean;
  /** How often each placeholder stands for a missing value. */
  placeholders: Map<number, number>;
  /** What the file itself says of mended hours: 0 measured, 1 bridged, 2 filled; `null` where it says nothing. */
  mended: Uint8Array | null;
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
    doubledRows: 0,
    summer: null,
    firstYear: 0,
    isDaily: false,
    placeholders: new Map(),
    mended: null,
    rows: 0,
    lastLine: 1,
    splitByErbs: false,
    notices: [],
  };
}

/**
 * Claims the hour of the year that a row is for. Month and day count from 1, `hour` is the start of the interval.
 *
 * @param calendarYear 0 where the row names none
 * @returns its index, or -1 for a row of 29 February, which is left out
 * @throws WeatherError when there is no such date or the hour already has a row
 */
export function claimHour(
  into: HourColumns,
  month: number,
  day: number,
  hour: number,
  line: number,
  calendarYear = 0,
): number {
  const labelled = hourOfYear(month, day, hour);
  into.rows++;
  into.lastLine = line;
  if (labelled === 'leap day') {
    into.leapRows++;
    return -1;
  }
  if (labelled === 'no date') {
    throw new WeatherError(into.source, line, `month ${month}, day ${day}, hour from ${hour} is not on the calendar`);
  }
  if (into.firstYear === 0) into.firstYear = calendarYear;
  const index = into.summer ? standardHour(into, labelled, into.summer) : labelled;
  if (index < 0) {
    into.doubledRows++;
    return -1;
  }
  const earlier = into.lineOfHour[index]!;
  if (earlier > 0 && calendarYear !== into.firstYear) {
    throw new WeatherError(
      into.source,
      line,
      `the rows are of several years (${into.firstYear} and ${calendarYear}): in the site file write weather: { years: ${into.source} }`,
    );
  }
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

/**
 * The hour of standard time that a label of summer time means, or -1 for an hour that has its row already. The hour that
 * the clock goes through twice is taken as summer time first, then as standard time.
 */
function standardHour(into: HourColumns, labelled: number, { fromHour, toHour }: SummerHours): number {
  const inSummer =
    fromHour < toHour ? labelled >= fromHour && labelled < toHour : labelled >= fromHour || labelled < toHour;
  if (!inSummer) return into.lineOfHour[labelled]! > 0 ? -1 : labelled;
  const standard = (labelled + hoursPerYear - 1) % hoursPerYear;
  if (into.lineOfHour[standard] === 0) return standard;
  return into.lineOfHour[labelled] === 0 ? labelled : -1;
}

/** The error for a field that should hold a number. */
export function notANumber(source: string, line: number, column: string, text: string): WeatherError {
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text;
  const hint = /^[+-]?\d+,\d+$/.test(text.trim()) ? ' (with a point, not a comma)' : '';
  return new WeatherError(source, line, `${column} is "${shown}", expected a number${hint}`);
}

/** Says that a year joined from several, or so called, leaves out the bad winters. */
export function noteTypicalYear(hours: HourColumns, years: ReadonlySet<number>, named: boolean): void {
  if (!named && years.size < 2) return;
  const known = [...years].filter((year) => year > 1800);
  const joined = known.length > 1 ? ` joined from months of ${Math.min(...known)} to ${Math.max(...known)}` : '';
  hours.notices.push({
    code: 'typical-year',
    level: 'note',
    text: `a typical year${joined}: its months were chosen to be ordinary, so no bad winter is in it`,
  });
}
