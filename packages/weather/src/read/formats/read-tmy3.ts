import Papa from 'papaparse';
import { WeatherError } from '../../weather-error.js';
import type { WeatherPlace } from '../../weather-year.js';
import { type ColumnName, claimHour, createHourColumns, notANumber, noteTypicalYear } from '../hour-columns.js';
import { isPlaceholder } from '../mend/placeholders.js';
import { type Intake, oneStandardYear, type YearShelf } from '../year-shelf.js';
import { placeNumber } from './place-number.js';

// Column names of the TMY3 form, user's manual NREL/TP-581-43156 (2008), and what turns each into our unit.
const columnHeadings: readonly (readonly [ColumnName, heading: string, scale: number])[] = [
  ['ghi', 'GHI (W/m^2)', 1],
  ['dni', 'DNI (W/m^2)', 1],
  ['dhi', 'DHI (W/m^2)', 1],
  ['air', 'Dry-bulb (C)', 1],
  ['wind', 'Wspd (m/s)', 1],
  ['precipitation', 'Lprecip depth (mm)', 1],
  ['albedo', 'Alb (unitless)', 1],
  ['relative humidity', 'RHum (%)', 0.01],
  ['pressure', 'Pressure (mbar)', 100],
];
const required: readonly ColumnName[] = ['ghi', 'air', 'wind'];
const missingCode = -9900;

/** Reads a TMY3 file: columns by name, hour-ending 01:00 to 24:00 in local standard time, -9900 or blank missing. */
export function readTmy3(text: string, source: string, intake: Intake = oneStandardYear): YearShelf {
  const rows = Papa.parse<string[]>(text, { delimiter: ',' }).data;
  const headings = (rows[1] ?? []).map((heading) => heading.trim().toLowerCase());
  const found = columnHeadings
    .map(([name, heading, scale]) => ({ name, scale, at: headings.indexOf(heading.toLowerCase()) }))
    .filter((column) => column.at >= 0);
  for (const name of required) {
    if (!found.some((column) => column.name === name)) {
      const heading = columnHeadings.find((column) => column[0] === name)![1];
      throw new WeatherError(source, 2, `no column "${heading}"`);
    }
  }
  const hours = createHourColumns(
    source,
    'tmy3',
    found.map((column) => column.name),
  );
  hours.place = readPlace(rows[0] ?? [], source);
  hours.summer = intake.summer;
  const shelf = intake.start(hours);
  const years = new Set<number>();
  for (let r = 2; r < rows.length; r++) {
    const row = rows[r]!;
    const line = r + 1;
    if (row.length === 1 && row[0]!.trim() === '') continue;
    const date = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/.exec((row[0] ?? '').trim());
    const time = /^(\d{1,2}):00$/.exec((row[1] ?? '').trim());
    if (!date) throw new WeatherError(source, line, `date is "${row[0]}", expected MM/DD/YYYY`);
    if (!time) throw new WeatherError(source, line, `time is "${row[1] ?? ''}", expected HH:00 from 01:00 to 24:00`);
    const into = shelf.of(Number(date[3]));
    const index = claimHour(into, Number(date[1]), Number(date[2]), Number(time[1]) - 1, line, Number(date[3]));
    if (index < 0) continue;
    years.add(Number(date[3]));
    for (const { name, scale, at } of found) {
      const field = row[at] ?? '';
      if (field.trim() === '') continue;
      const value = Number(field);
      if (Number.isNaN(value)) throw notANumber(source, line, name, field);
      if (value > missingCode && !isPlaceholder(value, into)) into.columns.get(name)![index] = value * scale;
    }
  }
  for (const [calendarYear, read] of shelf.years()) if (calendarYear === 0) noteTypicalYear(read, years, true);
  return shelf;
}

/** First line: site code, name, state, time zone, latitude, longitude, elevation in metres. */
function readPlace(row: readonly string[], source: string): WeatherPlace {
  return {
    name: (row[1] ?? '').trim(),
    utcOffsetH: placeNumber(row[3], 'time zone', source, 1),
    latitudeDeg: placeNumber(row[4], 'latitude', source, 1),
    longitudeDeg: placeNumber(row[5], 'longitude', source, 1),
    elevationM: placeNumber(row[6], 'elevation', source, 1),
  };
}
