import { OutOfRangeError } from '@wintergap/ground';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { studentQuantile } from './student.js';

/** How sure the stated range is. */
export const rangeConfidence = 0.9;

/** Standard errors within which a mean difference is none that these years can show. */
export const clearStandardErrors = 2;

/** The mean of one figure over common years. */
export interface YearsMean {
  mean: number;
  /** Of the mean; 0 for a single year, which shows no spread. */
  standardError: number;
  /** Between these the mean of many more such years lies, at `rangeConfidence`; `null` when one year is all there is. */
  low: number | null;
  high: number | null;
  years: number;
}

/** What one design has more of a figure than another, over the same weather years. */
export interface PairedDifference extends YearsMean {
  /** Years in which it has less, and in which both are equal. */
  lessIn: number;
  equalIn: number;
  /**
   * `less` or `more` when the mean difference is beyond two standard errors and large enough to matter, and its range keeps
   * clear of half of that; `none` is no difference that these years can show. A single year can show none.
   */
  verdict: 'less' | 'more' | 'none';
}

/**
 * Mean with its standard error and range.
 *
 * Source: Student (1908), Biometrika 6, 1-25.
 *
 * @param values one for each year, at least one
 */
export function yearsMean(values: readonly number[]): YearsMean {
  const years = values.length;
  const middle = mean([...values]);
  if (years < 2) return { mean: middle, standardError: 0, low: null, high: null, years };
  const standardError = sampleStandardDeviation([...values]) / Math.sqrt(years);
  const reach = studentQuantile((1 + rangeConfidence) / 2, years - 1) * standardError;
  return { mean: middle, standardError, low: middle - reach, high: middle + reach, years };
}

/**
 * Compares one figure of two designs year by year. Weather that both share cancels, so the error is a fraction of that
 * of the difference of two separate means.
 *
 * @param values the figure in each year
 * @param base the same figure of the other design, for the same years in the same order
 * @param smallestThatMatters mean differences below it count as none, however sure they are
 */
export function pairedDifference(
  values: readonly number[],
  base: readonly number[],
  smallestThatMatters = 0,
): PairedDifference {
  if (values.length !== base.length || values.length === 0) {
    throw new OutOfRangeError(`designs must share their years, got ${values.length} and ${base.length}`);
  }
  const differences = values.map((value, year) => value - (base[year] ?? Number.NaN));
  const of = yearsMean(differences);
  return {
    ...of,
    lessIn: differences.filter((difference) => difference < 0).length,
    equalIn: differences.filter((difference) => difference === 0).length,
    verdict: verdictOf(of, smallestThatMatters),
  };
}

/**
 * The range must keep clear too: among many pairs of designs that differ by nothing to speak of, a few have a run more in
 * four or five years of 25, and a mean just large enough to matter.
 */
function verdictOf(
  { mean: middle, standardError, low, high }: YearsMean,
  smallest: number,
): PairedDifference['verdict'] {
  if (low === null || high === null || Math.abs(middle) < smallest) return 'none';
  if (Math.abs(middle) <= clearStandardErrors * standardError) return 'none';
  if (Math.min(Math.abs(low), Math.abs(high)) < smallest / 2) return 'none';
  return middle < 0 ? 'less' : 'more';
}
