import { mustHold, OutOfRangeError } from '@wintergap/ground';

/** Largest energy, power or capacity taken, Wh or W: far above any site, and sums of a year of it stay exact enough. */
export const largestAmount = 1e15;

/** Supply and demand of the same steps: equal length, at least one step, finite, none below zero. */
export function checkSeries(nameA: string, a: ArrayLike<number>, nameB: string, b: ArrayLike<number>): void {
  if (a.length === 0 || a.length !== b.length) {
    throw new OutOfRangeError(
      `${nameA} and ${nameB} must have the same length above 0, got ${a.length} and ${b.length}`,
    );
  }
  mustHold(nameA, a, a.length, 0, largestAmount);
  mustHold(nameB, b, b.length, 0, largestAmount);
}
