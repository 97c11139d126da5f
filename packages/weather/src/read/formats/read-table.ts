import { hoursPerYear, monthOfHour, monthSpan, OutOfRangeError } from '@wintergap/ground';
import { parseQuantity, QuantityError } from '@wintergap/quantity';
import Papa from 'papaparse';
import { WeatherError } from '../../weather-error.js';
import { claimHour, createHourColumns, type HourColumns, notANumber, noteTypicalYear } from '../hour-columns.js';
import { isPlaceholder } from '../mend/placeholders.js';
import { type Intake, oneStandardYear, type YearShelf } from '../year-shelf.js';
import { placeNumber } from './place-number.js';
import { type TableHeading, tableHeading } from './table-heading.js';

/**
 * Reads the plain table: comment lines that begin with `#`, one row of headings with units, one row an hour.
 *
 * `time` is the start of the hour, `time ends` its end, as `2023-01-31T14:00` in local standard time (the year may
 * be left out). Without a time column the rows must be exactly 8760, beginning with 1 January 00:00.
 * Comments may state `# latitude: 46.9`, `# longitude: -92.2`, `# utc offset: -6`, `# elevation: 430 m`, `# name: ...`.
 */
export function readTable(text: string, source: string, intake: Intake = oneStandardYear): YearShelf {
  const delimiter = delimiterOf(text);
  const rows = rowsOf(text, delimiter);
  let headingRow = 0;
  while (headingRow < rows.count && isRemark(rows.at(headingRow))) headingRow++;
  const headings = headingRow < rows.count ? readHeadings(rows.at(headingRow), source, headingRow + 1) : [];
  const columns = columnsOf(headings, source, Math.min(headingRow + 1, rows.count));
  const hours = createHourColumns(
    source,
    'table',
    columns.map((column) => column.name),
  );
  hours.summer = intake.summer;
  const mendedAt = headings.findIndex((heading) => heading.kind === 'mended');
  if (mendedAt >= 0) hours.mended = new Uint8Array(hoursPerYear);
  const ignored = headings.flatMap((heading) => (heading.kind === 'other' && heading.text ? [heading.text] : []));
  if (ignored.length > 0) {
    hours.notices.push({ code: 'columns-ignored', level: 'note', text: `columns not used: ${ignored.join(', ')}` });
  }
  for (let r = 0; r < headingRow; r++) {
    const row = rows.at(r);
    if (isComment(row)) readComment(row.join(delimiter), hours, r + 1);
  }
  const timeAt = headings.findIndex((heading) => heading.kind === 'time');
  const time = headings[timeAt];
  const ends = time?.kind === 'time' && time.ends;
  if (timeAt < 0) checkUntimed(rows, headingRow, hours);

  const shelf = intake.start(hours);
  let into: HourColumns | null = null;
  let values: Float64Array[] = [];
  let untimedHour = 0;
  for (let r = headingRow + 1; r < rows.count; r++) {
    const row = rows.at(r);
    const line = r + 1;
    if (isRemark(row)) continue;
    if (row.length !== headings.length) {
      throw new WeatherError(source, line, `${row.length} fields, expected ${headings.length} as in the headings`);
    }
    const when = timeAt < 0 ? nextHour(untimedHour++) : rowTime(source, row[timeAt]!, ends, line);
    const shelved = shelf.of(when.year);
    if (shelved !== into) {
      into = shelved;
      values = columns.map((column) => shelved.columns.get(column.name)!);
    }
    const index = claimHour(shelved, when.month, when.day, when.hour, line, when.year);
    if (index < 0) continue;
    if (mendedAt >= 0) shelved.mended![index] = Number(row[mendedAt]) || 0;
    for (let c = 0; c < columns.length; c++) {
      const { name, factor, offset, at } = columns[c]!;
      const field = row[at]!;
      const value = Number(field);
      if (value === 0 && field.trim() === '') continue;
      if (Number.isNaN(value)) throw notANumber(source, line, name, field.trim());
      if (isPlaceholder(value, shelved)) continue;
      values[c]![index] = value * factor + offset;
    }
  }
  return shelf;
}

/** The columns of values, each with its place in a row. */
function columnsOf(headings: readonly TableHeading[], source: string, line: number): PlacedColumn[] {
  const columns = headings.flatMap((heading, at) => (heading.kind === 'column' ? [{ ...heading, at }] : []));
  if (columns.length === 0) {
    throw new WeatherError(
      source,
      line,
      'not an EPW file, a TMY3 file or a table with headings such as time, ghi [W/m2], air [degC]',
    );
  }
  const twice = columns.find((column, i) => columns.findIndex((other) => other.name === column.name) < i);
  if (twice) throw new WeatherError(source, line, `two columns are ${twice.name}`);
  return columns;
}

type PlacedColumn = Extract<TableHeading, { kind: 'column' }> & { at: number };

/** The separator that stands most often in the first line that is neither blank nor a comment. */
function delimiterOf(text: string): string {
  const headings = /^(?![^\S\n]*#).*\S.*$/m.exec(text)?.[0] ?? '';
  const count = (separator: string): number => headings.split(separator).length;
  return [',', ';', '\t'].reduce((best, other) => (count(other) > count(best) ? other : best));
}

/** The rows of a table, each cut into fields when it is asked for. */
interface Rows {
  count: number;
  at: (r: number) => string[];
}

/** Only text with quotes in it needs more than cutting at the separators. */
function rowsOf(text: string, delimiter: string): Rows {
  if (text.includes('"')) {
    const rows = Papa.parse<string[]>(text, { delimiter }).data;
    return { count: rows.length, at: (r) => rows[r]! };
  }
  const lines = text.split('\n');
  return { count: lines.length, at: (r) => lines[r]!.split(delimiter) };
}

const isRemark = (row: readonly string[]): boolean => isComment(row) || row.every((field) => field.trim() === '');
const isComment = (row: readonly string[]): boolean => (row[0] ?? '').trimStart().startsWith('#');

function readHeadings(row: readonly string[], source: string, line: number): TableHeading[] {
  return row.map((text) => {
    try {
      return tableHeading(text);
    } catch (error) {
      if (error instanceof OutOfRangeError) throw new WeatherError(source, line, error.message);
      throw error;
    }
  });
}

function readComment(text: string, hours: HourColumns, line: number): void {
  const match = /^\s*#\s*([a-z -]+?)\s*:\s*(.*?)[\s,;]*$/i.exec(text);
  if (!match) return;
  const value = match[2]!;
  const { source, place } = hours;
  switch (match[1]!.toLowerCase()) {
    case 'name':
      place.name = value;
      break;
    case 'latitude':
      place.latitudeDeg = placeNumber(value, 'latitude', source, line);
      break;
    case 'longitude':
      place.longitudeDeg = placeNumber(value, 'longitude', source, line);
      break;
    case 'utc offset':
      place.utcOffsetH = placeNumber(value.replace(/\s*h(?:ours?)?$/, ''), 'time zone', source, line);
      break;
    case 'elevation':
      place.elevationM = placeNumber(String(elevationM(value, source, line)), 'elevation', source, line);
      break;
    case 'typical year':
      if (value === 'yes') noteTypicalYear(hours, new Set(), true);
      break;
    case 'kind':
      if (value === 'made') hours.kind = 'made';
      break;
    case 'split':
      if (value === 'erbs') hours.splitByErbs = true;
      break;
  }
}

function elevationM(text: string, source: string, line: number): number {
  try {
    return parseQuantity(text, 'length');
  } catch (error) {
    if (error instanceof QuantityError) throw new WeatherError(source, line, `elevation: ${error.message}`);
    throw error;
  }
}

/** The hour that a row is for, by its start; the year 0 where the row names none. */
interface RowTime {
  year: number;
  month: number;
  day: number;
  hour: number;
}

function rowTime(source: string, text: string, ends: boolean, line: number): RowTime {
  const match = /^\s*(?:(\d{4})-)?(\d{1,2})-(\d{1,2})[T ](\d{1,2}):(\d\d)(?::00)?\s*$/.exec(text);
  if (!match) {
    const zone = /(?:Z|[+-]\d\d:?\d\d)\s*$/.test(text) ? ' without a time zone' : '';
    throw new WeatherError(source, line, `time is "${text}", expected such as 2023-01-31T14:00${zone}`);
  }
  if (match[5] !== '00') throw new WeatherError(source, line, `time is "${text}", expected full hours`);
  const year = Number(match[1] ?? 0);
  const month = Number(match[2]);
  const day = Number(match[3]);
  const hour = Number(match[4]);
  if (!ends || month < 1 || month > 12) return { year, month, day, hour };
  // The hour that ends at 00:00 belongs to the day before; a day may also end at 24:00.
  if (hour > 0) return { year, month, day, hour: hour - 1 };
  if (day > 1) return { year, month, day: day - 1, hour: 23 };
  if (month === 1) return { year: Math.max(0, year - 1), month: 12, day: 31, hour: 23 };
  const before = month - 1;
  const lastDay = before === 2 && isLeap(year) && year > 0 ? 29 : monthSpan(before - 1).days;
  return { year, month: before, day: lastDay, hour: 23 };
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function nextHour(hour: number): RowTime {
  if (hour >= hoursPerYear) return { year: 0, month: 12, day: 31, hour: 24 };
  const month = monthOfHour(hour);
  const inMonth = hour - monthSpan(month).fromHour;
  return { year: 0, month: month + 1, day: Math.floor(inMonth / 24) + 1, hour: inMonth % 24 };
}

function checkUntimed(rows: Rows, headingRow: number, hours: HourColumns): void {
  let count = 0;
  for (let r = headingRow + 1; r < rows.count; r++) if (!isRemark(rows.at(r))) count++;
  if (count !== hoursPerYear) {
    throw new WeatherError(
      hours.source,
      headingRow + 1,
      `no time column and ${count} rows: without times exactly ${hoursPerYear} rows from 1 January 00:00 are expected`,
    );
  }
  hours.notices.push({
    code: 'time-assumed',
    level: 'warning',
    text: 'no time column: the rows are taken as the hours from 1 January 00:00, local standard time',
  });
}
