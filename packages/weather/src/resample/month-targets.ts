import { daysPerYear, monthStartHour } from '@wintergap/ground';
import { RandomStream } from '../make/random.js';
import { drawMonths, type MonthSpread, monthVariation, spreadOfYears } from '../spread.js';
import { type BlockWindow, type DrawnDays, drawDays } from './draw-days.js';
import type { MovedDaySum } from './exchange-days.js';

/** Sums of sunshine that the months of resampled years shall have. */
export interface MonthTargets {
  /** Wh/m2, twelve, for a year whose blocks are drawn. */
  draw(drawn: DrawnDays, random: RandomStream): Float64Array;
  /** `null` when none is added. */
  spread: MonthSpread | null;
}

/** Drawn years by which the mean and the spread of what blocks make by themselves are judged: to 0.5 % and 4 %. */
const trialYears = 400;

/**
 * Blocks have a spread of their own. A month's target is what its blocks make, moved by a departure drawn with the
 * variance that is missing. The mean of what blocks make is that of the weeks around the month, too: a better guess of
 * the place than one measured month, but not what a typical year says, so with typical years the target is moved by the
 * difference of the means.
 *
 * @param clearDays irradiation of the 365 days under the clearest sky, Wh/m2
 * @param times multiple of the spread that the sources show or that is assumed
 * @param typical whether the sources are typical years, whose mean is that of the place
 */
export function createMonthTargets(
  window: BlockWindow,
  sumOf: MovedDaySum,
  clearDays: Float64Array,
  times: number,
  typical: boolean,
): MonthTargets {
  const sources = Array.from({ length: window.years }, (_, year) => monthSums((day) => sumOf(year, day, day)));
  const clear = monthSums((day) => clearDays[day]!);
  const means = Float64Array.from(
    { length: 12 },
    (_, m) => sources.reduce((sum, of) => sum + of[m]!, 0) / window.years,
  );
  const { mean, deviation } = blockStatistics(window, sumOf);
  const spread = spreadOfYears(sources, clear, typical ? Number.POSITIVE_INFINITY : pooledMonths(window));
  const odds = spread.odds * times;
  const centring = means.map((wanted, m) => (typical && mean[m]! > 0 ? wanted / mean[m]! : 1));
  const own = deviation.map((of, m) => (mean[m]! > 0 ? of / mean[m]! : 0));
  const months = own.map((of, m) => (of > 0 ? Math.max(of, monthVariation(odds, means[m]! / clear[m]!)) : 0));
  const missing = months.map((total, m) => Math.sqrt(total * total - own[m]! * own[m]!));
  return {
    draw: ({ fromYear, fromDay }, random) => {
      const departures = drawMonths(spread.correlation, random);
      const sums = monthSums((day) => sumOf(fromYear[day]!, fromDay[day]!, day));
      return sums.map((sum, m) => sum * centring[m]! * Math.max(0.1, 1 + missing[m]! * departures[m]!));
    },
    spread: times === 0 ? null : { ...spread, odds, months: [...months] },
  };
}

/**
 * How many independent months stand behind the mean of one month of blocks: days are lent within the window, so the
 * weights of the dates are two boxes folded, one as long as the month and one as the window; the inverse of the sum of
 * their squares is the number of days that counts.
 */
export function pooledMonths({ years, windowDays }: BlockWindow): number {
  const month = daysPerYear / 12;
  const long = Math.max(month, 2 * windowDays + 1);
  const short = Math.min(month, 2 * windowDays + 1);
  return (years * (long / (1 - short / (3 * long)))) / month;
}

function monthSums(sumOfDay: (day: number) => number): Float64Array {
  const sums = new Float64Array(12);
  for (let m = 0; m < 12; m++) {
    for (let day = monthStartHour[m]! / 24; day < monthStartHour[m + 1]! / 24; day++) sums[m]! += sumOfDay(day);
  }
  return sums;
}

/** Mean and standard deviation of the monthly sums of years of blocks; the draws are the same for every seed. */
function blockStatistics(window: BlockWindow, sumOf: MovedDaySum): { mean: Float64Array; deviation: Float64Array } {
  const mean = new Float64Array(12);
  const squares = new Float64Array(12);
  for (let trial = 0; trial < trialYears; trial++) {
    const { fromYear, fromDay } = drawDays(window, new RandomStream(0, 14, trial));
    const sums = monthSums((day) => sumOf(fromYear[day]!, fromDay[day]!, day));
    for (let m = 0; m < 12; m++) {
      const step = sums[m]! - mean[m]!;
      mean[m]! += step / (trial + 1);
      squares[m]! += step * (sums[m]! - mean[m]!);
    }
  }
  return { mean, deviation: squares.map((sum) => Math.sqrt(sum / (trialYears - 1))) };
}
