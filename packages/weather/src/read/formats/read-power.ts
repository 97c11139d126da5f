import { hoursPerYear } from '@wintergap/ground';
import { parseQuantity } from '@wintergap/quantity';
import { WeatherError } from '../../weather-error.js';
import type { WeatherPlace } from '../../weather-year.js';
import { type ColumnName, claimHour, createHourColumns, type HourColumns, notANumber } from '../hour-columns.js';
import { isPlaceholder } from '../mend/placeholders.js';
import type { Intake, YearShelf } from '../year-shelf.js';
import { placeNumber } from './place-number.js';

// The parameters of the service that are used, and which of them may give the same column: the first found counts.
// From memory and public use.
const parameters: Readonly<Record<string, ColumnName>> = {
  ALLSKY_SFC_SW_DWN: 'ghi',
  ALLSKY_SFC_SW_DNI: 'dni',
  ALLSKY_SFC_SW_DIFF: 'dhi',
  T2M: 'air',
  T2M_MIN: 'air min',
  T2M_MAX: 'air max',
  WS10M: 'wind',
  WS2M: 'wind',
  PRECTOTCORR: 'precipitation',
  PRECTOT: 'precipitation',
  SNODP: 'snow depth',
  RH2M: 'relative humidity',
  PS: 'pressure',
  ALLSKY_SRF_ALB: 'albedo',
};

// What a value of a unit, as the head writes it, must be multiplied with: hours to W/m2, days to Wh/m2.
const hourlyUnits: Readonly<Record<string, number>> = {
  'Wh/m^2': 1,
  'W/m^2': 1,
  'kWh/m^2': 1000,
  'MJ/m^2': 1e3 / 3.6,
  'MJ/hr': 1e3 / 3.6,
};
const dailyUnits: Readonly<Record<string, number>> = {
  'kWh/m^2/day': 1000,
  'kW-hr/m^2/day': 1000,
  'MJ/m^2/day': 1e3 / 3.6,
  'W/m^2': 24,
};
const otherUnits: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  air: { C: 1 },
  wind: { 'm/s': 1 },
  precipitation: { 'mm/hour': 1, 'mm/day': 1, mm: 1 },
  'snow depth': { cm: 0.01, m: 1, mm: 0.001 },
  'relative humidity': { '%': 0.01 },
  pressure: { kPa: 1000 },
  albedo: { dimensionless: 1 },
};

/**
 * Reads a table of the POWER service (reanalysis and satellite weather of any place), hourly or daily: a head between
 * `-BEGIN HEADER-` and `-END HEADER-`, then columns `YEAR,MO,DY,HR` or `YEAR,MO,DY` or `YEAR,DOY` and parameters in any
 * order. Units are read from the head. Hours are labelled by their start; tables in UTC are moved to the site's standard
 * time by whole hours, tables in the service's local solar time (LST) run by the hours of longitude / 15. The form is
 * given here from memory and public use.
 *
 * @throws WeatherError also for a head that does not explain a column that is needed
 */
export function readPower(text: string, source: string, site: WeatherPlace, intake: Intake): YearShelf {
  const lines = text.split('\n');
  const headEnd = lines.findIndex((line) => /^\s*"?-END HEADER-/i.test(line));
  if (headEnd < 0) throw new WeatherError(source, 1, 'the head begins with -BEGIN HEADER- and has no -END HEADER-');
  const head = lines.slice(0, headEnd);
  const names = (lines[headEnd + 1] ?? '').split(',').map((name) => name.trim().toUpperCase());
  const at = (name: string): number => names.indexOf(name);
  const isDaily = at('HR') < 0;
  if (at('YEAR') < 0 || (at('DOY') < 0 && (at('MO') < 0 || at('DY') < 0))) {
    throw new WeatherError(source, headEnd + 2, 'the columns must begin with YEAR,MO,DY,HR, YEAR,MO,DY or YEAR,DOY');
  }
  const seen = new Set<ColumnName>();
  const columns = names.flatMap((name, index) => {
    const column = Object.hasOwn(parameters, name) ? parameters[name]! : undefined;
    if (!column || seen.has(column) || (!isDaily && column.startsWith('air '))) return [];
    seen.add(column);
    return [{ name: column, at: index, scale: scaleOf(name, column, head, isDaily, source) }];
  });
  const hours = createHourColumns(
    source,
    'power',
    columns.map(({ name }) => name),
  );
  hours.isDaily = isDaily;
  hours.summer = intake.summer;
  hours.place = readPlace(head, source);
  const fileOffsetH = clockOf(head, hours.place.longitudeDeg!, source);
  const wantedOffsetH = site.utcOffsetH ?? Math.round(hours.place.longitudeDeg! / 15);
  const moveH = isDaily ? 0 : Math.round(wantedOffsetH - fileOffsetH);
  hours.place.utcOffsetH = isDaily ? wantedOffsetH : fileOffsetH + moveH;
  noteReading(hours, names, fileOffsetH, moveH);
  const shelf = intake.start(hours);
  const when: DateColumns = { year: at('YEAR'), month: at('MO'), day: at('DY'), hour: at('HR'), dayOfYear: at('DOY') };
  const missing = missingCode(head);
  for (let r = headEnd + 2; r < lines.length; r++) {
    const row = lines[r]!.split(',');
    if (row.length === 1 && row[0]!.trim() === '') continue;
    if (row.length !== names.length) {
      throw new WeatherError(source, r + 1, `${row.length} fields, expected ${names.length} as in the headings`);
    }
    const year = Number(row[when.year]);
    const date = dateOf(row, when, moveH);
    if (Number.isNaN(date.getTime())) {
      throw new WeatherError(source, r + 1, `"${row.slice(0, 4).join()}" is no date`);
    }
    const into = shelf.of(date.getUTCFullYear());
    const index = claimHour(into, date.getUTCMonth() + 1, date.getUTCDate(), date.getUTCHours(), r + 1, year);
    if (index < 0) continue;
    for (const { name, at: column, scale } of columns) {
      const field = row[column]!;
      const value = Number(field);
      if (field.trim() === '' || value === missing) continue;
      if (Number.isNaN(value)) throw notANumber(source, r + 1, names[column]!, field);
      if (!isPlaceholder(value, into)) into.columns.get(name)![index] = value * scale;
    }
  }
  noteModelled(shelf);
  return shelf;
}

/** Which column holds which part of a row's date; -1 for none. */
interface DateColumns {
  year: number;
  month: number;
  day: number;
  hour: number;
  dayOfYear: number;
}

/** When the hour or day of a row begins; the month of a day of the year is left to the machine's calendar, in UTC. */
function dateOf(row: readonly string[], at: DateColumns, moveH: number): Date {
  const year = Number(row[at.year]);
  const hour = at.hour < 0 ? 0 : Number(row[at.hour]) + moveH;
  return at.dayOfYear >= 0
    ? new Date(Date.UTC(year, 0, Number(row[at.dayOfYear]), hour))
    : new Date(Date.UTC(year, Number(row[at.month]) - 1, Number(row[at.day]), hour));
}

/** Says which columns were not used, and by how much hours were moved. */
function noteReading({ notices }: HourColumns, names: readonly string[], fileOffsetH: number, moveH: number): void {
  const unused = names.filter((name) => !(name in parameters) && !/^(YEAR|MO|DY|HR|DOY)$/.test(name));
  if (unused.length > 0) {
    notices.push({ code: 'columns-ignored', level: 'note', text: `columns not used: ${unused.join(', ')}` });
  }
  if (moveH !== 0) {
    const zone = fileOffsetH === 0 ? 'UTC' : `UTC${fileOffsetH > 0 ? '+' : ''}${fileOffsetH}`;
    notices.push({ code: 'moved-to-zone', level: 'note', text: `hours of ${zone} were moved by ${moveH} h` });
  }
}

/** The factor that the unit in the head asks for. */
function scaleOf(name: string, column: ColumnName, head: readonly string[], isDaily: boolean, source: string): number {
  const line = head.findIndex((text) => new RegExp(`^\\s*"?${name}\\s`).test(text));
  const unit = line < 0 ? null : (/\(([^()]*)\)[\s",]*$/.exec(head[line]!)?.[1]?.trim() ?? null);
  if (unit === null) {
    throw new WeatherError(source, Math.max(1, line + 1), `the head does not say in which unit ${name} is`);
  }
  const table =
    column === 'ghi' || column === 'dni' || column === 'dhi'
      ? isDaily
        ? dailyUnits
        : hourlyUnits
      : (otherUnits[column.replace(/ m(?:in|ax)$/, '')] ?? {});
  const plain = unit.replace(/\s+/g, '').replace(/m2/g, 'm^2');
  const scale = Object.hasOwn(table, plain) ? table[plain] : undefined;
  if (scale === undefined) {
    throw new WeatherError(
      source,
      line + 1,
      `${name} is in "${unit}", expected ${Object.keys(table).join(' or ')} in ${isDaily ? 'a daily' : 'an hourly'} table`,
    );
  }
  return scale;
}

function readPlace(head: readonly string[], source: string): WeatherPlace {
  const at = head.findIndex((line) => /latitude/i.test(line) && /longitude/i.test(line));
  const match = /latitude\s+(-?[\d.]+)\s+longitude\s+(-?[\d.]+)/i.exec(head[at] ?? '');
  if (!match) throw new WeatherError(source, at + 1 || 1, 'the head has no "Location: latitude 46.9 longitude -92.2"');
  const place: WeatherPlace = {
    latitudeDeg: placeNumber(match[1], 'latitude', source, at + 1),
    longitudeDeg: placeNumber(match[2], 'longitude', source, at + 1),
  };
  const high = head.findIndex((line) => /elevation/i.test(line));
  const elevation = /=\s*(-?[\d.]+)\s*(m|ft)/i.exec(head[high] ?? '');
  if (elevation) place.elevationM = parseQuantity(`${elevation[1]} ${elevation[2]!.toLowerCase()}`, 'length');
  return place;
}

/** Hours that the table's clock is ahead of UTC. */
function clockOf(head: readonly string[], longitudeDeg: number, source: string): number {
  const at = head.findIndex((line) => /^\s*"?dates?\b/i.test(line));
  const line = head[at] ?? '';
  if (/\bUTC\b/i.test(line)) return 0;
  if (/\bLST\b/i.test(line)) return Math.round(longitudeDeg / 15);
  throw new WeatherError(source, at + 1 || 1, 'the head does not say whether its dates are in LST or UTC');
}

function missingCode(head: readonly string[]): number {
  const line = head.find((text) => /missing/i.test(text)) ?? '';
  return Number(/(-\d+(?:\.\d+)?)\D*$/.exec(line)?.[1] ?? -999);
}

function noteModelled(shelf: YearShelf): void {
  for (const read of shelf.years().values()) {
    read.notices.push({
      code: 'modelled-weather',
      level: 'note',
      text: 'reanalysis and satellite weather of an area of tens of kilometres: valleys, coasts and single storms are smoothed',
      rows: hoursPerYear,
    });
  }
}
