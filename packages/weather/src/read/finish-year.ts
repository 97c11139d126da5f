import { hoursPerYear, hourText } from '@wintergap/ground';
import { WeatherError } from '../weather-error.js';
import type { WeatherPlace, WeatherYear } from '../weather-year.js';
import { checkLimits } from './column-limits.js';
import { completeIrradiance } from './complete-irradiance.js';
import { bridgeGap, findGaps, type Gap, holdGap, setGap } from './fill-gaps.js';
import type { ColumnName, HourColumns } from './hour-columns.js';

/** Longest run of missing hours that is bridged by a straight line. */
const longestGapH = { air: 6, wind: 6, irradiance: 3, snow: 48 } as const;
/** A column that may be absent is dropped when more of it than this is missing. */
const mostMissing = 0.1;
/** Of a year's rows, as many as this may be missing before the file is refused. */
const mostMissingRows = 100;
/** Used when the file has no wind: the wind of the nominal cell temperature test, on the warm side for modules. */
const assumedWindMs = 1;

/** Turns the columns of a file into a year without gaps, or refuses, naming the line. */
export function finishYear(hours: HourColumns, fallbackPlace: WeatherPlace): WeatherYear {
  const place: WeatherPlace = { ...fallbackPlace, ...hours.place };
  checkRows(hours);
  checkLimits(hours);
  const airC = fillRequired(hours, 'air', longestGapH.air);
  const windMs = allMissing(hours, 'wind') ? assumeWind(hours) : fillRequired(hours, 'wind', longestGapH.wind);
  if (allMissing(hours, 'ghi') && (allMissing(hours, 'dni') || allMissing(hours, 'dhi'))) {
    throw new WeatherError(hours.source, 1, 'no global irradiance (ghi), nor beam and diffuse to work it out');
  }
  const splitFrom = completeIrradiance(hours, place);
  return {
    source: hours.source,
    kind: hours.kind,
    place,
    ghiWm2: fillRequired(hours, 'ghi', longestGapH.irradiance),
    dniWm2: fillRequired(hours, 'dni', longestGapH.irradiance),
    dhiWm2: fillRequired(hours, 'dhi', longestGapH.irradiance),
    airC,
    windMs,
    snowDepthM: snowDepth(hours),
    precipitationMm: precipitation(hours),
    albedo: fillOptional(hours, 'albedo', holdGap),
    relativeHumidity: fillOptional(hours, 'relative humidity', bridgeGap),
    pressurePa: fillOptional(hours, 'pressure', bridgeGap),
    splitFrom,
    notices: hours.notices,
    lineOfHour: hours.lineOfHour,
  };
}

function checkRows(hours: HourColumns): void {
  let missing = 0;
  let firstMissing = -1;
  for (let h = 0; h < hoursPerYear; h++) {
    if (hours.lineOfHour[h]! > 0) continue;
    missing++;
    if (firstMissing < 0) firstMissing = h;
  }
  if (missing > mostMissingRows) {
    throw new WeatherError(
      hours.source,
      lineBefore(hours, firstMissing),
      `${hours.rows} hourly rows, expected ${hoursPerYear} or ${hoursPerYear + 24}: the first missing hour begins ${hourText(firstMissing)}, after this line`,
    );
  }
  if (missing > 0) {
    hours.notices.push({
      code: 'missing-hours',
      level: 'warning',
      text: `${missing} hours have no row, the first begins ${hourText(firstMissing)} after line ${lineBefore(hours, firstMissing)}`,
      rows: missing,
    });
  }
  if (hours.leapRows > 0) {
    hours.notices.push({
      code: 'leap-day-dropped',
      level: 'note',
      text: `29 February (${hours.leapRows} rows) was left out: the year has ${hoursPerYear} hours`,
      rows: hours.leapRows,
    });
  }
}

/** Line of the row before an hour, or the first line of the file. */
function lineBefore(hours: HourColumns, hour: number): number {
  for (let h = hour - 1; h >= 0; h--) if (hours.lineOfHour[h]! > 0) return hours.lineOfHour[h]!;
  return 1;
}

function allMissing(hours: HourColumns, name: ColumnName): boolean {
  return hours.columns.get(name)?.every(Number.isNaN) ?? true;
}

function fillRequired(hours: HourColumns, name: ColumnName, longestH: number): Float64Array {
  const values = hours.columns.get(name);
  if (!values || allMissing(hours, name)) throw new WeatherError(hours.source, 1, `no values of ${name}`);
  const gaps = findGaps(values);
  let filled = 0;
  for (const gap of gaps) {
    if (gap.hours > longestH) throw tooLong(hours, name, gap, longestH);
    bridgeGap(values, gap);
    filled += gap.hours;
  }
  if (filled > 0) {
    hours.notices.push({
      code: 'gaps-filled',
      level: filled > mostMissingRows ? 'warning' : 'note',
      text: `${name}: ${filled} missing hours in ${gaps.length} gaps were bridged by straight lines, the first from ${hourText(gaps[0]!.start)}`,
      rows: filled,
    });
  }
  return values;
}

function tooLong(hours: HourColumns, name: ColumnName, gap: Gap, longestH: number): WeatherError {
  const line = hours.lineOfHour[gap.start]! || lineBefore(hours, gap.start);
  return new WeatherError(
    hours.source,
    line,
    `${name} is missing for ${gap.hours} hours from ${hourText(gap.start)}; gaps up to ${longestH} hours are bridged`,
  );
}

function assumeWind(hours: HourColumns): Float64Array {
  hours.notices.push({
    code: 'wind-assumed',
    level: 'warning',
    text: `no wind: ${assumedWindMs} m/s is assumed all year, which makes modules a little warmer than they are`,
  });
  return new Float64Array(hoursPerYear).fill(assumedWindMs);
}

/** Depth is often read once a day, so it is held until the next reading. */
function snowDepth(hours: HourColumns): Float64Array | null {
  const values = hours.columns.get('snow depth');
  if (!values || allMissing(hours, 'snow depth')) return null;
  const gaps = findGaps(values);
  const tooLongGap = gaps.find((gap) => gap.hours > longestGapH.snow);
  if (tooLongGap) {
    hours.notices.push(notUsed('snow depth', values));
    return null;
  }
  for (const gap of gaps) holdGap(values, gap);
  return values;
}

/** A year without a drop is a file without precipitation. */
function precipitation(hours: HourColumns): Float64Array | null {
  const values = fillOptional(hours, 'precipitation', (column, gap) => setGap(column, gap, 0));
  if (!values?.every((amount) => amount === 0)) return values;
  hours.notices.push({
    code: 'column-not-used',
    level: 'note',
    text: 'precipitation is 0 in all hours of the year and is not used',
    rows: hoursPerYear,
  });
  return null;
}

function fillOptional(
  hours: HourColumns,
  name: ColumnName,
  fill: (values: Float64Array, gap: Gap) => void,
): Float64Array | null {
  const values = hours.columns.get(name);
  if (!values || allMissing(hours, name)) return null;
  if (countMissing(values) > mostMissing * hoursPerYear) {
    hours.notices.push(notUsed(name, values));
    return null;
  }
  for (const gap of findGaps(values)) fill(values, gap);
  return values;
}

function notUsed(name: ColumnName, values: Float64Array): WeatherYear['notices'][number] {
  const missing = countMissing(values);
  return {
    code: 'column-not-used',
    level: 'note',
    text: `${name} is missing in ${missing} of ${hoursPerYear} hours and is not used`,
    rows: missing,
  };
}

function countMissing(values: Float64Array): number {
  if (!values.includes(Number.NaN)) return 0;
  let missing = 0;
  for (let h = 0; h < hoursPerYear; h++) if (Number.isNaN(values[h]!)) missing++;
  return missing;
}
