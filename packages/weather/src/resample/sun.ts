import { daysPerYear, hoursPerYear } from '@wintergap/ground';
import { clearestSky, extraterrestrialHorizontal } from '../make/ceiling.js';
import { monthMeans, smoothThroughMonths } from '../make/monthly-smooth.js';
import { restoreSum } from '../make/restore.js';
import { closingBeamWm2 } from '../read/mend/beam-of-hour.js';
import { sunOf, sunPlace } from '../sun-of-place.js';
import type { WeatherPlace, WeatherYear } from '../weather-year.js';

/** Below these an hour or a day has too little sun for a ratio to say anything. */
const leastHourWm2 = 30;
const leastDayWhPerM2 = 50;

/** The three irradiances of a year. */
export type IrradianceYear = Pick<WeatherYear, 'ghiWm2' | 'dniWm2' | 'dhiWm2'>;

/** Moves days of irradiance to other dates of the year at one place. */
export interface SunTransfer {
  /** Writes the irradiance of a source's day to a day of another year, under the sun of that day. */
  moveDay(source: IrradianceYear, fromDay: number, into: IrradianceYear, day: number): void;
  /** Global irradiation that a source's day will have on another, Wh/m2. */
  movedSum(source: IrradianceYear, fromDay: number, day: number): number;
  /** Global irradiation of each day under the clearest sky, Wh/m2; `null` when the sun of the place is not known. */
  clearDays: Float64Array | null;
}

/**
 * A moved day keeps its clearness index as it stood to the season's, the ups and downs of its hours and their diffuse
 * shares. Clearness is measured as a share of that of the clearest sky on its date; the odds of the share are changed
 * by as much as those of the season change between the dates. So clear days stay clear, and months keep their mean when
 * weather comes from a brighter season next door. A day for which that means nothing, because the sun hardly rises on
 * one of the two dates, is not moved: the date keeps its own weather.
 * Where latitude, longitude and UTC offset are not known, days are copied as they are.
 */
export function createSunTransfer(place: WeatherPlace, sources: readonly IrradianceYear[]): SunTransfer {
  const where = sunPlace(place);
  const days = new Map(sources.map((source) => [source, daySums(source.ghiWm2)]));
  if (!where) return { moveDay: copyDay, movedSum: (source, fromDay) => days.get(source)![fromDay]!, clearDays: null };
  const sun = sunOf(where);
  const outside = extraterrestrialHorizontal(sun);
  const ceilingWm2 = clearestSky(sun, place.elevationM ?? 0);
  const most = daySums(ceilingWm2);
  const seasons = new Map(sources.map((source) => [source, seasonalOdds(source.ghiWm2, ceilingWm2)]));
  const hourCeilings = new Float64Array(hoursPerYear);

  // A day that hardly has sun on one of the two dates stays: the date keeps its own weather.
  const stays = (fromDay: number, day: number): boolean =>
    fromDay === day || most[fromDay]! < leastDayWhPerM2 || most[day]! < leastDayWhPerM2;

  const shareOf = (source: IrradianceYear, fromDay: number): number =>
    Math.min(0.999, days.get(source)![fromDay]! / most[fromDay]!);

  const movedSum: SunTransfer['movedSum'] = (source, fromDay, day) => {
    if (stays(fromDay, day)) return days.get(source)![day]!;
    const share = shareOf(source, fromDay);
    const season = seasons.get(source)!;
    const odds = (share / (1 - share)) * (season[day]! / season[fromDay]!);
    return (most[day]! * odds) / (1 + odds);
  };

  const moveUnderSun = (source: IrradianceYear, fromDay: number, into: IrradianceYear, day: number): void => {
    const { ghiWm2 } = into;
    const [first, firstFrom] = [day * 24, fromDay * 24];
    const share = shareOf(source, fromDay);
    for (let i = 0; i < 24; i++) {
      const bright = outside[firstFrom + i]! > leastHourWm2;
      const clearness = bright ? source.ghiWm2[firstFrom + i]! / outside[firstFrom + i]! : share * 0.7;
      ghiWm2[first + i] = clearness * outside[first + i]!;
      // Measured hours may be brighter than the clearest sky; they are let be.
      hourCeilings[first + i] = Math.max(ceilingWm2[first + i]!, 1.002 * ghiWm2[first + i]!);
    }
    restoreSum(ghiWm2, hourCeilings, first, first + 24, movedSum(source, fromDay, day));
    for (let i = 0; i < 24; i++) {
      const [h, from] = [first + i, firstFrom + i];
      const diffuse = source.ghiWm2[from]! > 0 ? Math.min(1, source.dhiWm2[from]! / source.ghiWm2[from]!) : 1;
      into.dniWm2[h] = closingBeamWm2(ghiWm2[h]! * (1 - diffuse), sun, h);
      // The difference of two equal numbers may fall a hair below zero.
      into.dhiWm2[h] = Math.max(0, ghiWm2[h]! - into.dniWm2[h]! * sun.meanCosZenith[h]!);
    }
  };
  return {
    moveDay: (source, fromDay, into, day) => {
      if (stays(fromDay, day)) copyDay(source, day, into, day);
      else moveUnderSun(source, fromDay, into, day);
    },
    movedSum,
    clearDays: most,
  };
}

/** Odds, share / (1 - share), of the sunshine that the season brings of the clearest sky's, for each day. */
function seasonalOdds(ghiWm2: Float64Array, ceilingWm2: Float64Array): Float64Array {
  const got = monthMeans(ghiWm2);
  const most = monthMeans(ceilingWm2);
  const shares = Array.from(got, (mean, m) => (most[m]! > 1 ? Math.min(0.95, mean / most[m]!) : 0.5));
  const season = smoothThroughMonths(shares);
  return Float64Array.from({ length: daysPerYear }, (_, day) => {
    const share = Math.min(0.95, Math.max(0.05, season[day * 24 + 12]!));
    return share / (1 - share);
  });
}

function copyDay(source: IrradianceYear, fromDay: number, into: IrradianceYear, day: number): void {
  const from = fromDay * 24;
  into.ghiWm2.set(source.ghiWm2.subarray(from, from + 24), day * 24);
  into.dniWm2.set(source.dniWm2.subarray(from, from + 24), day * 24);
  into.dhiWm2.set(source.dhiWm2.subarray(from, from + 24), day * 24);
}

/** Sums of the 365 days of an hourly year. */
function daySums(hours: Float64Array): Float64Array {
  const sums = new Float64Array(365);
  for (let h = 0; h < hoursPerYear; h++) sums[Math.floor(h / 24)]! += hours[h]!;
  return sums;
}
