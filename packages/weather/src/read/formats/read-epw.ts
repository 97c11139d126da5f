import Papa from 'papaparse';
import { WeatherError } from '../../weather-error.js';
import type { WeatherPlace } from '../../weather-year.js';
import {
  type ColumnName,
  claimHour,
  createHourColumns,
  type HourColumns,
  notANumber,
  noteTypicalYear,
} from '../hour-columns.js';
import { isPlaceholder } from '../mend/placeholders.js';
import { type Intake, oneStandardYear, type YearShelf } from '../year-shelf.js';
import { placeNumber } from './place-number.js';

/** Where a column stands in a row, from what value on it means "missing", and what turns it into our unit. */
interface EpwField {
  name: ColumnName;
  at: number;
  missingFrom: number;
  scale: number;
}

// Field order, units and missing codes of the EPW form, as its public documentation gives them.
// Writers differ in how many nines they use, so anything from the shortest code up counts as missing.
const fields: readonly EpwField[] = [
  { name: 'air', at: 6, missingFrom: 99.9, scale: 1 },
  { name: 'relative humidity', at: 8, missingFrom: 999, scale: 0.01 },
  { name: 'pressure', at: 9, missingFrom: 999_999, scale: 1 },
  { name: 'ghi', at: 13, missingFrom: 9999, scale: 1 },
  { name: 'dni', at: 14, missingFrom: 9999, scale: 1 },
  { name: 'dhi', at: 15, missingFrom: 9999, scale: 1 },
  { name: 'wind', at: 21, missingFrom: 999, scale: 1 },
  { name: 'snow depth', at: 30, missingFrom: 999, scale: 0.01 },
  { name: 'albedo', at: 32, missingFrom: 9, scale: 1 },
  { name: 'precipitation', at: 33, missingFrom: 999, scale: 1 },
];

/** Field numbers that are cut out of a row, in order: year, month, day, hour and the fields above. */
const wanted = Uint8Array.from([0, 1, 2, 3, ...fields.map((field) => field.at)]);
/** A row may leave out the fields after the last of ours. */
const leastFields = wanted[wanted.length - 1]! + 1;
const dataStart = /^DATA PERIODS[^\n]*\n/im;

/**
 * Reads an EPW file. Rows are placed by month, day and hour (hour-ending 1 to 24, local standard time); the calendar
 * year of a row only tells a typical year from a real one.
 *
 * The rows hold no quoted text, so the wanted fields are cut out between their commas and no others are made text of.
 */
export function readEpw(text: string, source: string, intake: Intake = oneStandardYear): YearShelf {
  const hours = createHourColumns(
    source,
    'epw',
    fields.map((field) => field.name),
  );
  const start = dataStart.exec(text);
  if (!start) throw new WeatherError(source, 1, 'an EPW header without a DATA PERIODS line');
  const header = text.slice(0, start.index + start[0].length);
  hours.place = readPlace(header, source);
  const headerLines = header.split('\n').length - 1;
  const perHour = Number(start[0].split(',')[2]);
  if (perHour > 1) throw new WeatherError(source, headerLines, `${perHour} rows an hour, expected hourly rows`);
  const typical = /\b(TMY\d?|TRY|IWEC\d?|CWEC\d*|WYEC\d*|TMYx|typical|average year|reference year|design year)\b/i;
  hours.summer = intake.summer;
  const shelf = intake.start(hours);
  const isTypical = typical.test(header.replace(/^(?!LOCATION|COMMENTS).*$/gim, ''));
  readRows(text, header.length, headerLines, shelf, source, isTypical);
  return shelf;
}

function readPlace(header: string, source: string): WeatherPlace {
  const row = Papa.parse<string[]>(header, { preview: 1, delimiter: ',' }).data[0] ?? [];
  const name = (row[1] ?? '').trim();
  return {
    ...(name === '' ? {} : { name }),
    latitudeDeg: placeNumber(row[6], 'latitude', source, 1),
    longitudeDeg: placeNumber(row[7], 'longitude', source, 1),
    utcOffsetH: placeNumber(row[8], 'time zone', source, 1),
    elevationM: placeNumber(row[9], 'elevation', source, 1),
  };
}

function readRows(
  text: string,
  from: number,
  headerLines: number,
  shelf: YearShelf,
  source: string,
  typicalHeader: boolean,
): void {
  let hours: HourColumns | null = null;
  let columns: Float64Array[] = [];
  const missingFroms = Float64Array.from(fields, (field) => field.missingFrom);
  const scales = Float64Array.from(fields, (field) => field.scale);
  const row = new Array<string>(wanted.length).fill('');
  const years = new Set<number>();
  let line = headerLines;
  let begin = from;
  while (begin < text.length) {
    const found = text.indexOf('\n', begin);
    const end = found < 0 ? text.length : found;
    line++;
    if (!cutRow(text, begin, end, row)) {
      refuseUnlessBlank(text.slice(begin, end), source, line);
      begin = end + 1;
      continue;
    }
    begin = end + 1;
    const hour = Number(row[3]);
    if (!(hour >= 1 && hour <= 24)) {
      throw new WeatherError(source, line, `hour is "${row[3]}", EPW hours run from 1 to 24`);
    }
    const year = Number(row[0]);
    const into = shelf.of(year);
    if (into !== hours) {
      hours = into;
      columns = fields.map((field) => into.columns.get(field.name)!);
    }
    const index = claimHour(into, Number(row[1]), Number(row[2]), hour - 1, line, year > 1800 ? year : 0);
    if (index < 0) continue;
    if (year > 1800) years.add(year);
    for (let f = 0; f < columns.length; f++) {
      const field = row[f + 4]!;
      const value = Number(field);
      if (value < missingFroms[f]!) {
        if (isPlaceholder(value, into)) continue;
        if (value !== 0 || field.trim() !== '') columns[f]![index] = value * scales[f]!;
      } else if (Number.isNaN(value)) {
        throw notANumber(source, line, fields[f]!.name, field);
      }
    }
  }
  for (const [calendarYear, read] of shelf.years()) if (calendarYear === 0) noteTypicalYear(read, years, typicalHeader);
}

/** Cuts the wanted fields out of the line from `begin` to `end`; false when it has too few. */
function cutRow(text: string, begin: number, end: number, row: string[]): boolean {
  let at = begin;
  let taken = 0;
  for (let field = 0; field < leastFields; field++) {
    const comma = text.indexOf(',', at);
    const last = comma < 0 || comma >= end;
    if (last && field < leastFields - 1) return false;
    if (field === wanted[taken]!) row[taken++] = text.slice(at, last ? end : comma);
    at = comma + 1;
  }
  return true;
}

/** A line with anything on it is a row with too few fields. */
function refuseUnlessBlank(row: string, source: string, line: number): void {
  if (row.trim() === '') return;
  throw new WeatherError(source, line, `${row.split(',').length} fields, expected the 35 of an EPW row`);
}
