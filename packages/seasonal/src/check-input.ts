import { OutOfRangeError } from '@wintergap/ground';
/** Largest energy, power or capacity taken, Wh or W: far above any site, and sums of a year of it stay exact enough. */
export const largestAmount = 1e15;

/** Supply and demand of the same steps: equal length, at least one step, finite, none below zero. */
export function checkSeries(nameA: string, a: ArrayLike<number>, nameB: string, b: ArrayLike<number>): void {
  if (a.length === 0 || a.length !== b.length) {
    throw new OutOfRangeError(
      `${nameA} and ${nameB} must have the same length above 0, got ${a.length} and ${b.length}`,
    );
  }
  checkAmounts(nameA, a);
  checkAmounts(nameB, b);
}

function checkAmounts(name: string, amounts: ArrayLike<number>): void {
  for (let t = 0; t < amounts.length; t++) {
    const amount = amounts[t]!;
    if (!(typeof amount === 'number' && amount >= 0 && amount <= largestAmount)) {
      throw new OutOfRangeError(`${name}[${t}] must be 0 to ${largestAmount}, got ${amount}`);
    }
  }
}
