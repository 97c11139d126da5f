import { mustBeAbove } from '@wintergap/ground';
import { probit } from 'simple-statistics';

/**
 * Quantile of Student's t distribution, for ranges around the mean of few values.
 *
 * Source: Hill (1970), Communications of the ACM 13, algorithm 396, exact for 1 and 2 degrees of freedom; Abramowitz and
 * Stegun (1964), Handbook of Mathematical Functions, eq. 26.7.5 (expansion in 1 / degrees of freedom) for more. At 0.95 it
 * is within 0.2 % of printed tables.
 *
 * @param p probability, above 0 and below 1
 * @param degreesOfFreedom 1 or more
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  mustBeAbove('degrees of freedom', degreesOfFreedom, 0);
  const n = degreesOfFreedom;
  if (n === 1) return Math.tan(Math.PI * (p - 0.5));
  if (n === 2) return (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
  const x = probit(p);
  const g1 = (x ** 3 + x) / 4;
  const g2 = (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96;
  const g3 = (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384;
  const g4 = (79 * x ** 9 + 776 * x ** 7 + 1482 * x ** 5 - 1920 * x ** 3 - 945 * x) / 92_160;
  return x + g1 / n + g2 / n ** 2 + g3 / n ** 3 + g4 / n ** 4;
}
