import type { CostAgainst } from '@wintergap/study';
import { count, figure } from './figures.js';

/** The money of a site's prices, as `costs.currency` names it. */
export type Currency = string | undefined;

/** Heads of columns of money. */
export const moneyUnit = (currency: Currency): string => currency ?? 'your currency';

/** `112 EUR`, or the figure alone where the site file names no currency and the words beside it say that it is money. */
export const amountText = (amount: number, currency: Currency): string =>
  `${figure(amount, Math.abs(amount) < 10 ? 2 : 0)}${currency === undefined ? '' : ` ${currency}`}`;

/** `1840 EUR`, or `1840 (your currency)` where the site file names none. */
export const moneyText = (amount: number, currency: Currency): string =>
  amountText(amount, currency ?? '(your currency)');

/**
 * How the cost of a design stands to another's, in a sentence. Where something has no price, what it may cost: the saving
 * in all the rest.
 *
 * @param years length of the comparison
 */
export function costAgainstInWords(
  name: string,
  base: string,
  { difference, here, there }: CostAgainst,
  years: number,
  currency: Currency,
): string {
  const { mean, low, high } = difference;
  const amount = moneyText(Math.abs(mean), currency);
  const sides = low === null || high === null ? [] : [low, high].map(Math.abs);
  // A range that reaches across zero has no one word for its side.
  const range = sides.length > 0 && low! * high! > 0 ? ` (90 % sure: ${boundsOf(sides)})` : '';
  const over = `over ${count(years, 'year')}`;
  const saves = mean < 0;
  const unpriced = 'has no price in the site file';
  if (here.length > 0 && there.length > 0) {
    const than = `than ${base}'s ${namesOf(there)} ${over}; neither has a price in the site file`;
    return saves
      ? `${name}: its ${namesOf(here)} may cost up to ${amount} more${range} ${than}.`
      : `${name}: its ${namesOf(here)} would have to cost at least ${amount} less ${than}.`;
  }
  if (here.length > 0) {
    return saves
      ? `${name}: its ${namesOf(here)} ${unpriced}, and is worth up to ${amount}${range}: it may cost that much ${over}, upkeep and repair included, before ${name} is dearer than ${base}.`
      : `${name}: its ${namesOf(here)} ${unpriced}; even for nothing it would make ${name} ${amount} dearer than ${base} ${over}.`;
  }
  if (there.length > 0) {
    return saves
      ? `${name} costs ${amount} less${range} than ${base} ${over}, and saves ${base}'s ${namesOf(there)} besides, which ${unpriced}.`
      : `${name} pays only if ${base}'s ${namesOf(there)}, which ${unpriced}, costs more than ${amount}${range} ${over}.`;
  }
  if (difference.verdict === 'none' && difference.years > 1) {
    return `${name}: no difference in cost from ${base} that ${count(difference.years, 'weather year')} can show.`;
  }
  return `${name} costs ${amount} ${saves ? 'less' : 'more'} than ${base} ${over}${range}.`;
}

const boundsOf = (sides: readonly number[]) => `${figure(Math.min(...sides), 0)} to ${figure(Math.max(...sides), 0)}`;

const namesOf = (names: readonly string[]) =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
