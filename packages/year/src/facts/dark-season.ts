import type { AutonomyQuestion } from '@wintergap/battery';
import { monthStartHour } from '@wintergap/ground';
import { monthlySums } from '@wintergap/tally';
import { hottestChargeC } from '../loop/bus-flow.js';
import type { Plant } from '../loop/plant.js';

/** When a place is short of sun, north or south of the equator. Months are 1 for January to 12. */
export interface DarkSeason {
  /** The month in which sun over load is least. */
  month: number;
  /** The three months in which it is least, in the order in which they follow one another. */
  months: number[];
}

/** How many months the dark season has. */
const seasonMonths = 3;

/**
 * The dark season by sun over load. A month without load is not dark, however little sun it has; without any load the
 * sun alone decides. Between months without sun the one with more load is the darker.
 *
 * The sun is the global irradiation, not that of an array's plane, so that all designs of a place that carry the same
 * loads are held against the same months.
 *
 * @param sun of each month, January first, in any unit
 * @param load of each month in any unit; its days where there is no load to speak of
 */
export function darkSeasonOf(sun: ArrayLike<number>, load: ArrayLike<number>): DarkSeason {
  const months = Array.from({ length: 12 }, (_, m) => m);
  const loaded = months.filter((m) => load[m]! > 0);
  const weight = (m: number) => (loaded.length === 0 ? daysOfMonth(m) : load[m]!);
  const sunFor = (m: number) => (weight(m) > 0 ? sun[m]! / weight(m) : Number.POSITIVE_INFINITY);
  const darkestFirst = months.toSorted((one, other) => {
    const [a, b] = [sunFor(one), sunFor(other)];
    return a === b ? weight(other) - weight(one) : a - b;
  });
  return {
    month: darkestFirst[0]! + 1,
    months: inSequence(darkestFirst.slice(0, seasonMonths)).map((m) => m + 1),
  };
}

/** The dark season of a place and its loads, as asked for at their terminals. */
export function darkSeason(ghiWm2: Float64Array, acW: Float64Array, dcW: Float64Array): DarkSeason {
  const dc = monthlySums(dcW);
  return darkSeasonOf(
    monthlySums(ghiWm2),
    monthlySums(acW).map((wh, m) => wh + dc[m]!),
  );
}

/** Mean of an hourly series over a month, 1 for January. */
export function monthMean(hourly: Float64Array, month: number): number {
  const from = monthStartHour[month - 1]!;
  const to = monthStartHour[month]!;
  let sum = 0;
  for (let h = from; h < to; h++) sum += hourly[h]!;
  return sum / (to - from);
}

/** What a month asks of the bank when there is no sun: the draw on the DC bus, at that month's bank temperature. */
export function autonomyQuestion(plant: Plant, bankC: Float64Array, month: number): AutonomyQuestion {
  return {
    averageLoadW:
      monthMean(plant.inverterInputW, month) +
      monthMean(plant.converterInputW, month) +
      monthMean(plant.ownUseW, month),
    tempC: Math.min(monthMean(bankC, month), hottestChargeC),
  };
}

const daysOfMonth = (month: number) => (monthStartHour[month + 1]! - monthStartHour[month]!) / 24;

/** Months in the order in which they follow one another: the longest rest of the year stands before the first. */
function inSequence(months: readonly number[]): number[] {
  const sorted = months.toSorted((one, other) => one - other);
  const restBefore = (i: number) => (sorted[i]! - sorted.at(i - 1)! + 12) % 12;
  let first = 0;
  for (let i = 1; i < sorted.length; i++) if (restBefore(i) > restBefore(first)) first = i;
  return [...sorted.slice(first), ...sorted.slice(0, first)];
}
