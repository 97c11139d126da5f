import type { RandomStream } from './make/random.js';

/** How the sunshine of months of the same name differs from year to year. */
export interface SunSpread {
  /**
   * Standard deviation of a month's sunshine in units of its own reach: with s the share of the clearest sky's sunshine
   * that the month has in the mean, the relative standard deviation is `odds` x (1 - s). A month that is dull in the
   * mean so differs much, one that is nearly always clear hardly.
   */
  odds: number;
  /** Between any two months of one year, 0 to 1. */
  correlation: number;
  /** Where it comes from: months measured at Lyngby, or the years themselves. */
  from: 'lyngby' | 'years';
  /**
   * Part of `odds`: measured years are no mean but as many draws, so that another year differs from what they have by
   * sqrt(1 + 1/n) of the spread about the true mean (the usual prediction interval). 1 for typical years and for means.
   */
  forUnknownMean: number;
}

/** A spread and what it comes to at a place. */
export interface MonthSpread extends SunSpread {
  /** Relative standard deviation of each month's sunshine, January first. */
  months: readonly number[];
}

/**
 * The spread assumed for a place of which only one year, or twelve means, are known.
 *
 * Source: one-minute values of the DTU Construct climate station at Lyngby, Denmark (55.8 N), four winters of 2015 to
 * 2025: the sums of November, December, January and February have coefficients of variation of 19, 16, 17 and 14 %.
 * Those months have 0.42, 0.37, 0.40 and 0.45 of the clearest sky's sunshine, which makes `odds` 0.33, 0.25, 0.28 and
 * 0.25. The same 0.28 gives its summer months, at 0.55 to 0.7, 8 to 12 %. Few years and one maritime place: an order of
 * magnitude.
 *
 * The correlation is small: twelve independent months of this spread make a year of about 4 %, as years differ in the
 * north (common practice, no source), and 0.04 makes 4.5 %; much more would spread the years too far. In the
 * three winters measured the products of neighbouring months' departures average to a correlation of 0.2 +/- 0.3.
 */
export const measuredSpread: Readonly<SunSpread> = {
  odds: 0.28,
  correlation: 0.04,
  from: 'lyngby',
  forUnknownMean: 1,
};

/** Months with less of the clearest sky's sunshine than this a day, Wh/m2, say nothing about their spread. */
export const leastMonthDayWhPerM2 = 50;

/**
 * The spread that several years show: variances of all months together, as `odds`. Two years have twelve differences to
 * judge from, which fixes it to about a fifth.
 *
 * @param sums for each year, its twelve monthly sums, Wh/m2
 * @param clearSums the twelve sums under the clearest sky on every day, Wh/m2
 * @param pooledMonths how many months are taken together for the mean of one; infinity for typical years, whose mean
 *   is that of the place
 * @returns about the measured spread of another place for a single year
 */
export function spreadOfYears(
  sums: readonly ArrayLike<number>[],
  clearSums: ArrayLike<number>,
  pooledMonths: number,
): SunSpread {
  const forUnknownMean = Math.sqrt(1 + 1 / pooledMonths);
  const shown = oddsShown(sums, clearSums);
  const odds = (shown ?? measuredSpread.odds) * forUnknownMean;
  return { ...measuredSpread, odds, from: shown === null ? 'lyngby' : 'years', forUnknownMean };
}

/** `null` from a single year. */
function oddsShown(sums: readonly ArrayLike<number>[], clearSums: ArrayLike<number>): number | null {
  const years = sums.length;
  if (years < 2) return null;
  let variances = 0;
  let months = 0;
  for (let m = 0; m < 12; m++) {
    let middle = 0;
    for (let year = 0; year < years; year++) middle += sums[year]![m]! / years;
    const reach = middle * (1 - Math.min(0.95, middle / clearSums[m]!));
    if (!(clearSums[m]! > leastMonthDayWhPerM2 * 28 && middle > 0)) continue;
    let squares = 0;
    for (let year = 0; year < years; year++) squares += (sums[year]![m]! - middle) ** 2;
    variances += squares / (years - 1) / (reach * reach);
    months++;
  }
  return months === 0 ? null : Math.sqrt(variances / months);
}

/** Relative standard deviation of a month that has the share `s` of the clearest sky's sunshine in the mean. */
export const monthVariation = (odds: number, s: number): number => odds * (1 - Math.min(1, Math.max(0, s)));

/** Departures of the twelve months of one year, in standard deviations; rare draws are held at three. */
export function drawMonths(correlation: number, random: RandomStream): Float64Array {
  const common = Math.sqrt(correlation) * random.normal();
  const own = Math.sqrt(1 - correlation);
  return Float64Array.from({ length: 12 }, () => Math.min(3, Math.max(-3, common + own * random.normal())));
}
