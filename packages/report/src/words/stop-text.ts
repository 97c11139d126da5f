import type { UnitSystem } from '@wintergap/quantity';
import { exceededLimits, saidOfLimit, type YearResult } from '@wintergap/year';
import { count } from './figures.js';
import { inShownUnits } from './shown-units.js';

/** What must be changed before a design is built, as a sentence that stands before all others; empty where nothing is. */
export function stopText({ limits }: Pick<YearResult, 'limits'>, units: UnitSystem): string {
  const [first, ...more] = exceededLimits(limits);
  if (!first) return '';
  const others = more.length === 0 ? '' : ` (and ${count(more.length, 'limit')} more: see the cautions)`;
  return `STOP, not to be built so: ${inShownUnits(saidOfLimit(first), units)}${others}. Calculated estimates for planning: the local electrical code decides.`;
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
