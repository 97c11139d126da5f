import { daysPerYear, hoursPerYear } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import { clearestSky, extraterrestrialHorizontal } from '../../make/ceiling.js';
import { scatteredHours } from '../../make/hours.js';
import { RandomStream } from '../../make/random.js';
import { betweenNoons, courseOfTemperature, swingFromClearness } from '../../make/temperature.js';
import { sunOf, sunPlace } from '../../sun-of-place.js';
import { WeatherError } from '../../weather-error.js';
import type { WeatherPlace } from '../../weather-year.js';
import type { ColumnName, HourColumns } from '../hour-columns.js';

/** Fixes the passing clouds of a file's days; the calendar year is added, so that years differ. */
const cloudSeed = 1979;
/** A measured day is left so much room under the clearest sky that its hours can differ. */
const mostOfCeiling = 0.985;

/**
 * Hours from a year of days. Each day keeps its measured sum of global irradiation; its hours are those of a day of that
 * clearness (Aguiar & Collares-Pereira 1992), beam and diffuse are split later. Air follows the daily course of Erbs,
 * Klein & Beckman (1983) between the day's lowest and highest, which where they are missing follow from the clearness
 * (Hargreaves & Samani 1982). Wind goes from noon to noon on straight lines, rain and snow are even over the day.
 *
 * @param days the values of each day in its first hour: Wh/m2, degC, m/s, mm, m; NaN where missing
 * @throws WeatherError when the place is not known, as its sun is needed
 */
export function daysToHours(days: HourColumns, place: WeatherPlace): HourColumns {
  const where = sunPlace(place);
  if (!where) {
    throw new WeatherError(
      days.source,
      1,
      'daily sums need latitude, longitude and UTC offset to be turned into hours',
    );
  }
  const sun = sunOf(where);
  const outside = extraterrestrialHorizontal(sun);
  const columns = new Map<ColumnName, Float64Array>();
  const ghiOfDay = daily(days, 'ghi');
  const clearness = Float64Array.from({ length: daysPerYear }, (_, day) => ghiOfDay[day]! / sumOfDay(outside, day));
  columns.set('ghi', hoursOfSums(ghiOfDay, sun, outside, place.elevationM ?? 0, days.firstYear));
  const air = hourlyAir(days, clearness, 12 + where.utcOffsetH - where.longitudeDeg / 15);
  if (air) columns.set('air', air);
  for (const name of ['wind', 'relative humidity', 'pressure'] as const) {
    if (!days.columns.has(name)) continue;
    const values = daily(days, name);
    columns.set(
      name,
      Float64Array.from({ length: hoursPerYear }, (_, h) => betweenNoons(values, h)),
    );
  }
  for (const name of ['snow depth', 'albedo', 'precipitation'] as const) {
    if (!days.columns.has(name)) continue;
    const share = name === 'precipitation' ? 1 / 24 : 1;
    const values = daily(days, name);
    columns.set(
      name,
      Float64Array.from({ length: hoursPerYear }, (_, h) => values[Math.floor(h / 24)]! * share),
    );
  }
  return {
    ...days,
    columns,
    isDaily: false,
    splitByErbs: true,
    rows: days.rows * 24,
    leapRows: days.leapRows * 24,
    lineOfHour: Int32Array.from({ length: hoursPerYear }, (_, h) => days.lineOfHour[h - (h % 24)]!),
    notices: [...days.notices, madeHours],
  };
}

const madeHours: HourColumns['notices'][number] = {
  code: 'hours-from-days',
  level: 'note',
  text: 'the file has sums and means of days; each day keeps its sum, its hours are made (Aguiar and Collares-Pereira 1992)',
  rows: hoursPerYear,
};

/** Hours of global irradiance that have the sums of their days; a day brighter than the clearest sky raises its ceiling. */
function hoursOfSums(
  sums: Float64Array,
  sun: SunYear,
  outside: Float64Array,
  elevationM: number,
  year: number,
): Float64Array {
  const ceiling = clearestSky(sun, elevationM);
  for (let day = 0; day < daysPerYear; day++) {
    const raise = sums[day]! / (mostOfCeiling * sumOfDay(ceiling, day));
    if (raise > 1 && Number.isFinite(raise)) for (let h = day * 24; h < day * 24 + 24; h++) ceiling[h]! *= raise;
  }
  const known = sums.map((sum) => (Number.isNaN(sum) ? 0 : sum));
  const hours = scatteredHours(known, sun, outside, ceiling, new RandomStream(cloudSeed + year, 2));
  for (let h = 0; h < hoursPerYear; h++) if (Number.isNaN(sums[Math.floor(h / 24)]!)) hours[h] = Number.NaN;
  return hours;
}

/** Rounds in which the course between noons is moved until the days have their means. */
const meanRounds = 4;

function hourlyAir(days: HourColumns, clearness: Float64Array, solarNoonH: number): Float64Array | null {
  if (!days.columns.has('air') && !(days.columns.has('air min') && days.columns.has('air max'))) return null;
  const min = daily(days, 'air min');
  const max = daily(days, 'air max');
  const given = daily(days, 'air');
  const mean = given.map((value, day) => (Number.isNaN(value) ? (min[day]! + max[day]!) / 2 : value));
  const swing = mean.map((_, day) => {
    const span = max[day]! - min[day]!;
    return span >= 0 ? span : swingFromClearness(clearness[day]! >= 0 ? clearness[day]! : 0.4);
  });
  const course = Float64Array.from({ length: 24 }, (_, hour) => courseOfTemperature((hour + 36.5 - solarNoonH) % 24));
  const middle = mean.slice();
  const airC = new Float64Array(hoursPerYear);
  for (let round = 0; round < meanRounds; round++) {
    for (let h = 0; h < hoursPerYear; h++) airC[h] = betweenNoons(middle, h) + betweenNoons(swing, h) * course[h % 24]!;
    for (let day = 0; day < daysPerYear; day++) {
      const off = mean[day]! - sumOfDay(airC, day) / 24;
      if (!Number.isNaN(off)) middle[day]! += off;
    }
  }
  return airC;
}

/** The values of the days of a column; NaN in a column that is not there. */
function daily(days: HourColumns, name: ColumnName): Float64Array {
  const values = days.columns.get(name);
  return Float64Array.from({ length: daysPerYear }, (_, day) => (values ? values[day * 24]! : Number.NaN));
}

function sumOfDay(hours: Float64Array, day: number): number {
  let sum = 0;
  for (let h = day * 24; h < day * 24 + 24; h++) sum += hours[h]!;
  return sum;
}
