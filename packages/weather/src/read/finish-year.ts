import { dateInWords, hoursPerYear, hourText } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import { sunOf, sunPlace } from '../sun-of-place.js';
import { WeatherError } from '../weather-error.js';
import type { WeatherPlace, WeatherYear } from '../weather-year.js';
import { checkLimits } from './formats/column-limits.js';
import type { ColumnName, HourColumns } from './hour-columns.js';
import { completeIrradiance } from './mend/complete-irradiance.js';
import { bridgeGap, findGaps, type Gap, holdGap, setGap } from './mend/fill-gaps.js';
import { mendByWave, mendIrradiance } from './mend/mend-gaps.js';
import { mostMended, tooMuchMissing } from './mend/mend-limits.js';
import { notePlaceholders } from './mend/placeholders.js';
import { shiftClock } from './mend/shift-clock.js';
import type { ReadSettings } from './read-settings.js';

/** Longest run of missing hours that is bridged by a straight line. */
const longestGapH = { air: 6, wind: 6, irradiance: 3, snow: 48 } as const;
/** A column that may be absent is dropped when more of it than this is missing. */
const mostMissing = 0.1;
/** Of a year's rows, as many as this may be missing before the file is refused. */
const mostMissingRows = 100;
/** Used when the file has no wind: the wind of the nominal cell temperature test, on the warm side for modules. */
const assumedWindMs = 1;

/**
 * Turns the columns of a file into a year without gaps, or refuses, naming the line.
 *
 * @throws WeatherError also when a gap is longer than those that are bridged, unless `mend` fills it
 */
export function finishYear(
  hours: HourColumns,
  { place: fallback = {}, clock, mend = false, path = hours.source }: ReadSettings,
): WeatherYear {
  const place: WeatherPlace = { ...fallback, ...hours.place };
  checkRows(hours, mend);
  checkLimits(hours);
  notePlaceholders(hours);
  const where = sunPlace(place);
  const needsSun = clock !== undefined && !Number.isInteger(clock.shiftH);
  if (clock) shiftClock(hours, clock, where && needsSun ? sunOf(where) : null);
  const flags = new Uint8Array(hoursPerYear);
  const filling: Filling = { hours, path, mend, flags };
  const airC = fillRequired(filling, 'air', longestGapH.air, (values, gap) => mendByWave(values, gap));
  const windMs = allMissing(hours, 'wind')
    ? assumeWind(hours)
    : fillRequired(filling, 'wind', longestGapH.wind, (values, gap) => mendByWave(values, gap, 0));
  if (allMissing(hours, 'ghi') && (allMissing(hours, 'dni') || allMissing(hours, 'dhi'))) {
    throw new WeatherError(hours.source, 1, 'no global irradiance (ghi), nor beam and diffuse to work it out');
  }
  const splitFrom = completeIrradiance(hours, place);
  if (mend) fillIrradiance(filling, where ? sunOf(where) : null);
  const [ghiWm2, dniWm2, dhiWm2] = irradianceNames.map((name) =>
    fillRequired(filling, name, longestGapH.irradiance, null),
  );
  const { mended: before } = hours;
  const mended = before ? flags.map((flag, h) => Math.max(flag, before[h]!)) : flags;
  noteMended(mended, hours);
  return {
    source: hours.source,
    kind: hours.kind,
    place,
    ghiWm2: ghiWm2!,
    dniWm2: dniWm2!,
    dhiWm2: dhiWm2!,
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
    mended,
  };
}

const irradianceNames = ['ghi', 'dni', 'dhi'] as const;

/** Fills the hours without irradiance whose gaps are too long for a straight line. */
function fillIrradiance({ hours, flags }: Filling, sun: SunYear | null): void {
  const columns = irradianceNames.map((name) => hours.columns.get(name)!);
  const gaps = findGaps(columns[0]!);
  const long = gaps.filter((gap) => gap.hours > longestGapH.irradiance);
  if (long.length === 0 && columns.every((values) => findGaps(values).every((gap) => gap.hours <= 3))) return;
  const tooMuch = tooMuchMissing(gaps, mostMended.irradiance);
  if (tooMuch) throw refused(hours, 'irradiance', tooMuch, mostMended.irradiance, gaps[0]!);
  // Short gaps stay open for straight lines: only the long ones are filled here.
  const short = columns.map((values) => findGaps(values).filter((gap) => gap.hours <= longestGapH.irradiance));
  mendIrradiance(columns, sun);
  columns.forEach((values, c) => {
    for (const gap of short[c]!) setGap(values, gap, Number.NaN);
  });
  let filled = 0;
  for (const gap of long) filled += flagGap(flags, gap, 2);
  hours.notices.push({
    code: 'gaps-mended',
    level: 'note',
    text: `irradiance: ${filled} missing hours were filled from the same hours of neighbouring days, scaled to what is known of the day: ${gapsInWords(long)}`,
    rows: filled,
  });
}

/** Marks the hours of a gap as bridged (1) or filled (2), and counts them. */
function flagGap(flags: Uint8Array, gap: Gap, flag: 1 | 2): number {
  for (let i = 0; i < gap.hours; i++) {
    const h = (gap.start + i) % hoursPerYear;
    flags[h] = Math.max(flags[h]!, flag);
  }
  return gap.hours;
}

/** Above this share of the year, hours that were not measured are a warning. Common practice, no source. */
const manyMended = 0.02;

/** Says how many hours of the year were filled, now or before it was written. */
function noteMended(mended: Uint8Array, hours: HourColumns): void {
  let filled = 0;
  let bridged = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    if (mended[h] === 2) filled++;
    else if (mended[h] === 1) bridged++;
  }
  if (filled === 0) return;
  const percent = ((filled / hoursPerYear) * 100).toFixed(1);
  const also = bridged > 0 ? `, and ${bridged} were bridged` : '';
  hours.notices.push({
    code: 'mended-hours',
    level: filled > manyMended * hoursPerYear ? 'warning' : 'note',
    text: `${filled} hours (${percent} % of the year) were not measured but filled from the days around them${also}`,
    rows: filled,
  });
}

/** What is being filled, and what is said of it. */
interface Filling {
  hours: HourColumns;
  path: string;
  mend: boolean;
  flags: Uint8Array;
}

function checkRows(hours: HourColumns, mend: boolean): void {
  let missing = 0;
  let firstMissing = -1;
  for (let h = 0; h < hoursPerYear; h++) {
    if (hours.lineOfHour[h]! > 0) continue;
    missing++;
    if (firstMissing < 0) firstMissing = h;
  }
  if (missing > mostMissingRows && !mend) {
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
  if (hours.doubledRows > 0) {
    hours.notices.push({
      code: 'doubled-hours',
      level: 'note',
      text: `${hours.doubledRows} rows were left out because summer time names their hour twice`,
      rows: hours.doubledRows,
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

function fillRequired(
  { hours, path, mend, flags }: Filling,
  name: ColumnName,
  longestH: number,
  fillLong: ((values: Float64Array, gap: Gap) => void) | null,
): Float64Array {
  const values = hours.columns.get(name);
  if (!values || allMissing(hours, name)) throw new WeatherError(hours.source, 1, `no values of ${name}`);
  const gaps = findGaps(values);
  const long = gaps.filter((gap) => gap.hours > longestH);
  const short = gaps.filter((gap) => gap.hours <= longestH);
  if (long.length > 0 && !(mend && fillLong)) throw tooLong(hours, path, name, long, gaps, longestH);
  if (long.length > 0 && fillLong) {
    const most = name === 'wind' ? mostMended.wind : mostMended.air;
    const tooMuch = tooMuchMissing(gaps, most);
    if (tooMuch) throw refused(hours, name, tooMuch, most, long[0]!);
    for (const gap of short) bridgeGap(values, gap);
    for (const gap of long) fillLong(values, gap);
    const filled = long.reduce((sum, gap) => sum + flagGap(flags, gap, 2), 0);
    hours.notices.push({
      code: 'gaps-mended',
      level: 'note',
      text: `${name}: ${filled} missing hours were filled by the daily wave of the days around: ${gapsInWords(long)}`,
      rows: filled,
    });
  }
  let filled = 0;
  for (const gap of short) {
    bridgeGap(values, gap);
    filled += flagGap(flags, gap, 1);
  }
  if (filled > 0) {
    hours.notices.push({
      code: 'gaps-filled',
      level: filled > mostMissingRows ? 'warning' : 'note',
      text: `${name}: ${filled} missing hours in ${short.length} gaps were bridged by straight lines, the first from ${hourText(short[0]!.start)}`,
      rows: filled,
    });
  }
  return values;
}

function tooLong(
  hours: HourColumns,
  path: string,
  name: ColumnName,
  long: readonly Gap[],
  all: readonly Gap[],
  longestH: number,
): WeatherError {
  const [gap] = long;
  const line = hours.lineOfHour[gap!.start]! || lineBefore(hours, gap!.start);
  const missing = all.reduce((sum, { hours: length }) => sum + length, 0);
  return new WeatherError(
    hours.source,
    line,
    `${name} is missing for ${gap!.hours} hours from ${hourText(gap!.start)}; gaps up to ${longestH} hours are bridged. ${missing} hours of ${name} are missing in all: ${gapsInWords(all)}. To fill them from the days around: wintergap weather ${/\s/.test(path) ? `"${path}"` : path} --mend --table mended.csv`,
  );
}

function refused(hours: HourColumns, what: string, missing: string, most: number, first: Gap): WeatherError {
  const line = hours.lineOfHour[first.start]! || lineBefore(hours, first.start);
  return new WeatherError(
    hours.source,
    line,
    `${what} is missing in ${missing}: more than ${Math.round(most * 100)} % of a month is not filled, since the month would not be this year's any more`,
  );
}

const shownGaps = 6;

/** `27 October 03:00 (70 h), ...`, the longest first. */
function gapsInWords(gaps: readonly Gap[]): string {
  const words = [...gaps]
    .sort((a, b) => b.hours - a.hours || a.start - b.start)
    .slice(0, shownGaps)
    .map(({ start, hours }) => `${dateInWords(Math.floor(start / 24))} ${hourText(start).slice(6)} (${hours} h)`);
  return `${words.join(', ')}${gaps.length > shownGaps ? ` and ${gaps.length - shownGaps} more` : ''}`;
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
