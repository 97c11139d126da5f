import Papa from 'papaparse';
import { type ColumnName, claimHour, createHourColumns, type HourColumns, notANumber } from './hour-columns.js';
import { placeNumber } from './place-number.js';
import { noteTypicalYear } from './typical-year.js';
import { WeatherError } from './weather-error.js';
import type { WeatherPlace } from './weather-year.js';

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

/** One row, from its start: captures year, month, day, hour and the fields above. The 35th field may be absent. */
const wantedFields = new RegExp(
  `${Array.from({ length: 34 }, (_, at) =>
    at < 4 || fields.some((field) => field.at === at) ? '([^,\\n]*)' : '[^,\\n]*',
  ).join(',')}[^\\n]*\\n?`,
  'y',
);
const dataStart = /^DATA PERIODS[^\n]*\n/im;

/**
 * Reads an EPW file. Rows are placed by month, day and hour (hour-ending 1 to 24, local standard time); the calendar
 * year of a row only tells a typical year from a real one.
 *
 * The rows hold no quoted text, so one expression picks the fields wanted from each: 26 ms for a file of 1.6 MB,
 * where making text of all its fields takes 40 to 90.
 */
export function readEpw(text: string, source: string): HourColumns {
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
  readRows(text, header.length, headerLines, hours, typical.test(header.replace(/^(?!LOCATION|COMMENTS).*$/gim, '')));
  return hours;
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

function readRows(text: string, from: number, headerLines: number, hours: HourColumns, typicalHeader: boolean): void {
  const columns = fields.map((field) => hours.columns.get(field.name)!);
  const missingFroms = Float64Array.from(fields, (field) => field.missingFrom);
  const scales = Float64Array.from(fields, (field) => field.scale);
  const years = new Set<number>();
  let line = headerLines;
  wantedFields.lastIndex = from;
  while (wantedFields.lastIndex < text.length) {
    const begin = wantedFields.lastIndex;
    const row = wantedFields.exec(text);
    line++;
    if (!row) {
      wantedFields.lastIndex = skipBlankLine(text, begin, hours.source, line);
      continue;
    }
    const hour = Number(row[4]);
    if (!(hour >= 1 && hour <= 24)) {
      throw new WeatherError(hours.source, line, `hour is "${row[4]}", EPW hours run from 1 to 24`);
    }
    const index = claimHour(hours, Number(row[2]), Number(row[3]), hour - 1, line);
    if (index < 0) continue;
    if (Number(row[1]) > 1800) years.add(Number(row[1]));
    for (let f = 0; f < columns.length; f++) {
      const field = row[f + 5]!;
      const value = Number(field);
      if (value < missingFroms[f]!) {
        if (value !== 0 || field.trim() !== '') columns[f]![index] = value * scales[f]!;
      } else if (Number.isNaN(value)) {
        throw notANumber(hours.source, line, fields[f]!.name, field);
      }
    }
  }
  noteTypicalYear(hours, years, typicalHeader);
}

/** Start of the line after a blank one; a line with anything on it is a row with too few fields. */
function skipBlankLine(text: string, begin: number, source: string, line: number): number {
  const lineEnd = text.indexOf('\n', begin);
  const end = lineEnd < 0 ? text.length : lineEnd;
  const row = text.slice(begin, end);
  if (row.trim() !== '') {
    throw new WeatherError(source, line, `${row.split(',').length} fields, expected the 35 of an EPW row`);
  }
  return end + 1;
}
