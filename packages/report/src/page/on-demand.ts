import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import type { NamedYear } from '../text/compare.js';

/**
 * The report of one design's year as a page of HTML in one file: it loads nothing, prints on paper, reads on a phone.
 * The charts' libraries are loaded on the first call.
 *
 * @param variant the design's name where it is not the base
 */
export async function yearHtml(result: YearResult, units: UnitSystem, variant?: string): Promise<string> {
  const { yearPage } = await import('./report.js');
  return yearPage(result, units, variant);
}

/** The report of several designs side by side, the first being the base; otherwise as `yearHtml`. */
export async function compareHtml(designs: readonly NamedYear[], units: UnitSystem): Promise<string> {
  const { comparePage } = await import('./report.js');
  return comparePage(designs, units);
}
