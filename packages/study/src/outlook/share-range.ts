import { mustBeWhole } from '@wintergap/ground';

/** 95th percentile of the standard normal distribution, so that one in twenty lies beyond each bound. */
const z = 1.6448536269514722;

/** A share seen in a sample, and what the true one may be. */
export interface ShareRange {
  share: number;
  low: number;
  high: number;
}

/**
 * Share of `count` in `total` with its 90 % score interval, Wilson (1927), Journal of the American Statistical Association
 * 22, 209-212. Unlike the usual +/- it stays within 0 and 1, and says something when the count is 0.
 */
export function shareRange(count: number, total: number): ShareRange {
  mustBeWhole('total', total, 1, Number.MAX_SAFE_INTEGER);
  mustBeWhole('count', count, 0, total);
  const share = count / total;
  const scale = 1 + (z * z) / total;
  const middle = (share + (z * z) / (2 * total)) / scale;
  const half = (z / scale) * Math.sqrt((share * (1 - share)) / total + (z * z) / (4 * total * total));
  return {
    share,
    low: count === 0 ? 0 : Math.max(0, middle - half),
    high: count === total ? 1 : Math.min(1, middle + half),
  };
}
