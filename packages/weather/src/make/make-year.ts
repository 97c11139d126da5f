import { daysPerYear, hoursPerYear, monthOfDay, monthSpan, mustLie, OutOfRangeError } from '@wintergap/ground';
import { splitGlobal } from '@wintergap/irradiance';
import { drawMonths, type MonthSpread, measuredSpread, monthVariation } from '../spread.js';
import { type SunPlace, sunOf } from '../sun-of-place.js';
import type { Notice, WeatherPlace, WeatherYear } from '../weather-year.js';
import { clearestSky, extraterrestrialHorizontal } from './ceiling.js';
import { scatteredHours, smoothHours } from './hours.js';
import { wanderingClearness } from './markov-clearness.js';
import { checkMonthlyMeans, type MonthlyMeans, monthName } from './monthly-means.js';
import { checkSeed, RandomStream } from './random.js';
import { restoreSum } from './restore.js';
import { snowDepth } from './snow.js';
import { swingFromClearness, wanderingTemperature } from './temperature.js';
import { wanderingWind } from './wind.js';

/** A place known well enough to work out its sun. */
export type MadePlace = WeatherPlace & SunPlace;

export interface MakeYearSettings {
  /** A whole number; the same seed gives the same year to the last bit, another seed another year. */
  seed: number;
  /** Hours scattered by passing clouds (the default), or a smooth course on every day. */
  hours?: 'scattered' | 'smooth';
  /**
   * Moves the months off their means by chance, as months of real years are: in multiples of `measuredSpread`, 0 to 3.
   * Left out: 0, and every month has its mean exactly.
   */
  spread?: number;
}

/** A month may bring at most this share of what it would under the clearest sky on every day. */
const mostOfCeiling = 0.97;
/** A day may bring at most this share, so that its hours can still differ. */
const mostOfDayCeiling = 0.985;

const monthOfEachDay = Uint8Array.from({ length: daysPerYear }, (_, day) => monthOfDay(day));

/**
 * Makes a year of hourly weather from twelve monthly means. Months have the given means; days and hours vary as
 * measured ones do, and no hour is brighter than the clearest sky.
 *
 * Daily clearness: Aguiar, Collares-Pereira & Conde (1988). Hours: Aguiar & Collares-Pereira (1992), or the smooth
 * course of Collares-Pereira & Rabl (1979). Beam and diffuse: Erbs, Klein & Duffie (1982). Temperature, wind and snow:
 * see their own files.
 *
 * @throws OutOfRangeError when a mean is impossible at the place, or place or seed are out of range
 */
export function makeYear(means: MonthlyMeans, place: MadePlace, settings: MakeYearSettings): WeatherYear {
  checkMonthlyMeans(means);
  checkSeed(settings.seed);
  checkPlace(place);
  const { seed } = settings;
  const notices: Notice[] = [];
  const sun = sunOf(place);
  const outside = extraterrestrialHorizontal(sun);
  const ceiling = clearestSky(sun, place.elevationM ?? 0);
  const outsideOfDay = daySums(outside);
  const ceilingOfDay = daySums(ceiling);
  const { spread = 0 } = settings;
  mustLie('spread', spread, 0, 3);
  const usualSums = wantedMonthSums(means, outsideOfDay, ceilingOfDay, notices);
  const monthSums = spreadMonths(usualSums, ceilingOfDay, spread, new RandomStream(seed, 6));
  const days = daysOfMonths(monthSums, outsideOfDay, ceilingOfDay, new RandomStream(seed, 1));
  const { monthClearness, clearness, sumOfDay } = days;
  const solarNoonH = 12 + place.utcOffsetH - place.longitudeDeg / 15;
  const ghiWm2 =
    settings.hours === 'smooth'
      ? smoothHours(sumOfDay, sun, outside, ceiling, solarNoonH)
      : scatteredHours(sumOfDay, sun, outside, ceiling, new RandomStream(seed, 2));
  const { dniWm2, dhiWm2 } = splitGlobal(ghiWm2, sun);

  const airC = wanderingTemperature(
    {
      meanC: means.airC,
      swingK: swingOfMonths(means, monthClearness),
      clearness,
      extraterrestrialKWh: outsideOfDay.map((wh) => wh / 1000),
      monthOfDay: monthOfEachDay,
      solarNoonH,
    },
    new RandomStream(seed, 3),
  );
  notices.push(madeNotice(spread));
  return {
    source: `made from monthly means, seed ${seed}${spread > 0 ? `, spread ${spread}` : ''}`,
    kind: 'made',
    place: { ...place },
    ghiWm2,
    dniWm2,
    dhiWm2,
    airC,
    windMs: wanderingWind(means.windMs ?? new Array(12).fill(3), solarNoonH, new RandomStream(seed, 4)),
    snowDepthM: means.snow
      ? snowDepth({ snow: means.snow, airC, clearness, monthOfDay: monthOfEachDay }, new RandomStream(seed, 5))
      : null,
    precipitationMm: null,
    albedo: null,
    relativeHumidity: null,
    pressurePa: null,
    splitFrom: 'erbs',
    notices,
  };
}

/** Clearness and global irradiation, Wh/m2, of days that have the sums of their months. */
function daysOfMonths(
  monthSums: readonly number[],
  outsideOfDay: Float64Array,
  ceilingOfDay: Float64Array,
  random: RandomStream,
): { monthClearness: number[]; clearness: Float64Array; sumOfDay: Float64Array } {
  const monthClearness = monthSums.map((sum, m) => {
    const most = sumOfMonth(outsideOfDay, m);
    return most > 0 ? Math.min(1, sum / most) : 0;
  });
  const clearness = wanderingClearness(monthClearness, monthOfEachDay, random);
  const sumOfDay = clearness.map((K, day) => K * outsideOfDay[day]!);
  const mostOfDay = ceilingOfDay.map((most) => most * mostOfDayCeiling);
  for (let m = 0; m < 12; m++) {
    const { fromDay, toDay } = monthSpan(m);
    restoreSum(sumOfDay, mostOfDay, fromDay, toDay, monthSums[m]!);
  }
  for (let day = 0; day < daysPerYear; day++)
    clearness[day] = outsideOfDay[day]! > 0 ? sumOfDay[day]! / outsideOfDay[day]! : 0;
  return { monthClearness, clearness, sumOfDay };
}

/** Mean swing of the air between a day's lowest and highest, K: the table's, or from the month's clearness. */
const swingOfMonths = ({ dailyExtremes }: MonthlyMeans, monthClearness: readonly number[]): number[] =>
  monthClearness.map((K, m) =>
    dailyExtremes ? dailyExtremes.maxC[m]! - dailyExtremes.minC[m]! : swingFromClearness(K),
  );

const madeNotice = (spread: number): Notice => ({
  code: 'made-year',
  level: 'note',
  text:
    spread > 0
      ? 'made from twelve monthly means: months differ from them as much as measured ones of another place'
      : 'made from twelve monthly means: ordinary months by construction, so no bad winter is in it',
});

function checkPlace(place: MadePlace): void {
  mustLie('latitudeDeg', place.latitudeDeg, -90, 90);
  mustLie('longitudeDeg', place.longitudeDeg, -180, 180);
  mustLie('utcOffsetH', place.utcOffsetH, -14, 14);
  mustLie('elevationM', place.elevationM ?? 0, -450, 6000);
}

function daySums(hours: Float64Array): Float64Array {
  const days = new Float64Array(daysPerYear);
  for (let h = 0; h < hoursPerYear; h++) days[Math.floor(h / 24)]! += hours[h]!;
  return days;
}

function sumOfMonth(days: Float64Array, month: number): number {
  let sum = 0;
  const { fromDay, toDay } = monthSpan(month);
  for (let day = fromDay; day < toDay; day++) sum += days[day]!;
  return sum;
}

/**
 * What a multiple of the measured spread comes to in years made from monthly means.
 *
 * @throws RangeError when a mean is impossible at the place
 */
export function spreadOfMadeYears(means: MonthlyMeans, place: MadePlace, times: number): MonthSpread {
  const sun = sunOf(place);
  const ceilingOfDay = daySums(clearestSky(sun, place.elevationM ?? 0));
  const sums = wantedMonthSums(means, daySums(extraterrestrialHorizontal(sun)), ceilingOfDay, []);
  const odds = measuredSpread.odds * times;
  const months = sums.map((sum, m) => {
    const most = sumOfMonth(ceilingOfDay, m);
    return most > 0 ? monthVariation(odds, sum / most) : 0;
  });
  return { ...measuredSpread, odds, months };
}

/** Sums of a year whose months depart from the means, Wh/m2. */
function spreadMonths(sums: number[], ceilingOfDay: Float64Array, times: number, random: RandomStream): number[] {
  if (times === 0) return sums;
  const departures = drawMonths(measuredSpread.correlation, random);
  return sums.map((sum, m) => {
    const most = sumOfMonth(ceilingOfDay, m);
    if (!(most > 0)) return sum;
    const factor = 1 + monthVariation(measuredSpread.odds * times, sum / most) * departures[m]!;
    return Math.min(most * mostOfCeiling, sum * Math.max(0.1, factor));
  });
}

/**
 * Global irradiation that each month shall have, Wh/m2. Around polar night a table's mean may be a little more than
 * the sun itself can bring, as twilight counts too: up to 0.1 kWh/m2 a day over the ceiling is cut, with a notice.
 */
function wantedMonthSums(
  { sun }: MonthlyMeans,
  outsideOfDay: Float64Array,
  ceilingOfDay: Float64Array,
  notices: Notice[],
): number[] {
  return Array.from({ length: 12 }, (_, m) => {
    const { days } = monthSpan(m);
    const most = sumOfMonth(ceilingOfDay, m) * mostOfCeiling;
    const wanted =
      sun.kind === 'irradiation' ? sun.kWhPerM2Day[m]! * 1000 * days : sun.clearness[m]! * sumOfMonth(outsideOfDay, m);
    if (wanted <= most) return wanted;
    if (wanted - most > 100 * days) {
      const [got, allowed] = [wanted, most].map((wh) => (wh / 1000 / days).toFixed(2));
      throw new OutOfRangeError(
        `${monthName(m)}: ${got} kWh/m2 a day is more than the clearest sky gives here, ${allowed}`,
      );
    }
    notices.push({
      code: 'month-cut-to-clear-sky',
      level: 'warning',
      text: `${monthName(m)}: the mean was cut to ${(most / 1000 / days).toFixed(3)} kWh/m2 a day, the most the sun can bring`,
    });
    return most;
  });
}
