import { mustBeAbove } from '@wintergap/ground';
import { cumulativeStdNormalProbability, probit, sampleStandardDeviation } from 'simple-statistics';

/**
 * Standard error of a quantile of a sample, as of values spread normally: sqrt(p (1 - p) / n) over the density there.
 * For the median that is 1.253 times the error of the mean.
 *
 * Source: Kendall & Stuart, The Advanced Theory of Statistics, vol. 1, section 10.10 (from memory).
 *
 * @param values at least one; a single one shows no spread, and its error is 0
 * @param p above 0 and below 1
 */
export function quantileError(values: readonly number[], p: number): number {
  mustBeAbove('the share of years', p, 0);
  if (values.length < 2) return 0;
  const z = probit(p);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return (Math.sqrt((p * (1 - p)) / values.length) / density) * sampleStandardDeviation([...values]);
}

/**
 * How sure it is that a quantile lies within a limit, 0 to 1, by its distance from the limit in standard errors.
 *
 * @param margin how far the quantile lies within the limit; below 0 beyond it
 */
export function confidenceWithin(margin: number, standardError: number): number {
  if (standardError === 0) return margin >= 0 ? 1 : 0;
  return cumulativeStdNormalProbability(margin / standardError);
}
