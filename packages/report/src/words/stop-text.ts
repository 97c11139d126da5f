import type { UnitSystem } from '@wintergap/quantity';
import { exceededLimits, saidOfLimit, type YearResult } from '@wintergap/year';
import { count, wrap } from './figures.js';
import { inShownUnits } from './shown-units.js';

/**
 * What must be changed before a design is built, as a sentence that stands before all others; empty where nothing is.
 *
 * @param rest where its other limits are told
 */
export function stopText({ limits }: Pick<YearResult, 'limits'>, units: UnitSystem, rest = 'see the cautions'): string {
  const [first, ...more] = exceededLimits(limits);
  if (!first) return '';
  const others = more.length === 0 ? '' : ` (and ${count(more.length, 'limit')} more: ${rest})`;
  return `STOP, not to be built so: ${inShownUnits(saidOfLimit(first), units)}${others}. Calculated estimates for planning: the local electrical code decides.`;
}

/** An answer about a design on a page without its cautions: before it what must be changed, where something must. */
export function withStop(limits: YearResult['limits'], units: UnitSystem, answer: string): string {
  const stop = stopText({ limits }, units, '`check` gives them');
  return stop === '' ? answer : `${wrap(stop)}\n${answer}`;
}

/** The same of several designs, by name. */
export function stopNamesText(designs: readonly { name: string; result: Pick<YearResult, 'limits'> }[]): string {
  const over = designs.flatMap(({ name, result }) => {
    const codes = [...new Set(exceededLimits(result.limits).map(({ code }) => code.replaceAll('-', ' ')))];
    return codes.length === 0 ? [] : [`"${name}" (${codes.join(', ')})`];
  });
  return over.length === 0
    ? ''
    : `STOP, not to be built so, and not recommended here: ${over.join(', ')}. \`check\` gives the figures.`;
}
