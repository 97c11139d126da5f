/** Largest energy, power or capacity taken, Wh or W: far above any site, and sums of a year of it stay exact enough. */
export const largestAmount = 1e15;

/** A number that must lie in a range, both ends included; `Infinity` is never accepted. */
export function checkRange(name: string, value: number, least: number, most: number): void {
  if (!(value >= least && value <= most && Number.isFinite(value))) {
    const allowed = most === Number.POSITIVE_INFINITY ? `${least} or more` : `${least} to ${most}`;
    throw new RangeError(`${name} must be ${allowed}, got ${value}`);
  }
}

/** An efficiency: above 0 and up to 1. */
export function checkEfficiency(name: string, value: number): void {
  if (!(value > 0 && value <= 1)) throw new RangeError(`${name} must be above 0 and up to 1, got ${value}`);
}

/** Supply and demand of the same steps: equal length, at least one step, finite, none below zero. */
export function checkSeries(nameA: string, a: ArrayLike<number>, nameB: string, b: ArrayLike<number>): void {
  if (a.length === 0 || a.length !== b.length) {
    throw new RangeError(`${nameA} and ${nameB} must have the same length above 0, got ${a.length} and ${b.length}`);
  }
  checkAmounts(nameA, a);
  checkAmounts(nameB, b);
}

function checkAmounts(name: string, amounts: ArrayLike<number>): void {
  for (let t = 0; t < amounts.length; t++) {
    const amount = amounts[t]!;
    if (!(typeof amount === 'number' && amount >= 0 && amount <= largestAmount)) {
      throw new RangeError(`${name}[${t}] must be 0 to ${largestAmount}, got ${amount}`);
    }
  }
}
