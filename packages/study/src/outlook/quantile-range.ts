import { OutOfRangeError } from '@wintergap/ground';
import { binomialDistribution, quantileSorted } from 'simple-statistics';

/** A quantile of a sample, and between which of its values the true one lies. */
export interface QuantileRange {
  value: number;
  /** `null` when the sample is too small to bound it on that side. */
  low: number | null;
  high: number | null;
}

/** How sure the bounds are: one in twenty beyond each. */
export const confidence = 0.9;

/**
 * A quantile with distribution-free bounds from the order statistics: the r-th and s-th smallest value enclose the true
 * p-quantile with the chance that a binomial count of n draws with probability p lies from r to s - 1.
 *
 * Source: David & Nagaraja, Order Statistics, 3rd ed., section 7.1. The quantile itself interpolates between ranks
 * (type 7 of Hyndman & Fan 1996).
 *
 * @param sorted values, smallest first, at least one
 * @param p 0 to 1
 */
export function quantileRange(sorted: readonly number[], p: number): QuantileRange {
  const n = sorted.length;
  const chances = binomialDistribution(n, p);
  if (!chances) throw new OutOfRangeError(`a quantile needs at least one value and p from 0 to 1, got ${n} and ${p}`);
  const value = quantileSorted([...sorted], p);
  const tail = (1 - confidence) / 2;
  let low: number | null = null;
  let high: number | null = null;
  let below = 0;
  for (let rank = 1; rank <= n; rank++) {
    // Chance that fewer than `rank` draws fall below the true quantile.
    below += chances[rank - 1] ?? 0;
    if (below <= tail) low = sorted[rank - 1]!;
    if (high === null && below >= 1 - tail) high = sorted[rank - 1]!;
  }
  return { value, low, high };
}
