import { mustBeWhole, mustLie, OutOfRangeError } from '@wintergap/ground';

/**
 * Value today of one payment: F (1 + d)^-n. ASTM E917, single present value.
 *
 * @param payment in today's prices when the rate is real, in prices of its year when it is nominal
 * @param year years from now, 0 or more, parts of years allowed
 * @param discountRate per year, above -1; 0.03 is 3 %
 */
export function presentValueOfPayment(payment: number, year: number, discountRate: number): number {
  checkAmount('payment', payment);
  mustLie('year', year, 0, mostYears);
  checkRate('discountRate', discountRate);
  return payment * (1 + discountRate) ** -year;
}

/**
 * Value today of a payment due at the end of every year, in today's price, growing by `escalation` a year:
 * A x sum of ((1 + e)/(1 + d))^t, t = 1 to n. ASTM E917, uniform present value, modified where e is not 0.
 *
 * @param years whole number of payments
 */
export function presentValueOfSeries(yearly: number, years: number, discountRate: number, escalation: number): number {
  checkAmount('yearly', yearly);
  checkYears(years);
  checkRate('discountRate', discountRate);
  checkRate('escalation', escalation);
  return yearly * geometricSum((1 + escalation) / (1 + discountRate), years);
}

/**
 * Value today of replacing a part every so many years, at today's price, until the study ends. What would be due at
 * the very end is not bought.
 *
 * @param everyYears life of the part, above 0, parts of years allowed
 */
export function presentValueOfReplacements(
  cost: number,
  everyYears: number,
  years: number,
  discountRate: number,
): number {
  checkAmount('cost', cost);
  checkYears(years);
  checkRate('discountRate', discountRate);
  return cost * geometricSum((1 + discountRate) ** -everyYears, replacementsWithin(everyYears, years));
}

/** How often a part with a life of `everyYears` is replaced within `years`, the first purchase not counted. */
export function replacementsWithin(everyYears: number, years: number): number {
  if (everyYears !== Number.POSITIVE_INFINITY) mustLie('everyYears', everyYears, 0.001, Number.POSITIVE_INFINITY);
  // A life that divides the study to within rounding leaves nothing to replace at the end.
  return Math.max(0, Math.ceil(years / everyYears - 1e-9) - 1);
}

const mostYears = 200;

export function checkYears(years: number): void {
  mustBeWhole('years', years, 1, mostYears);
}

function checkRate(name: string, rate: number): void {
  if (!(rate > -0.5 && rate <= 1))
    throw new OutOfRangeError(`${name} must be above -0.5 and up to 1 a year, got ${rate}`);
}

export function checkAmount(name: string, amount: number): void {
  if (!Number.isFinite(amount)) throw new OutOfRangeError(`${name} must be a finite amount of money, got ${amount}`);
}

/** q + q^2 + ... + q^n. */
function geometricSum(q: number, n: number): number {
  const step = q - 1;
  // Near q = 1 the quotient loses digits; its first two terms are exact enough there.
  if (Math.abs(step) * n < 1e-6) return n * (1 + (step * (n + 1)) / 2);
  return (q * (q ** n - 1)) / step;
}
