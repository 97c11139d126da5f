import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import type { NamedYear } from '../../text/compare.js';
import type { ComparePageSettings } from '../compare-page.js';
import type { YearPageSettings } from '../year-page.js';

/**
 * The report of one design's year as a page of HTML in one file: it loads nothing, prints on paper, reads on a phone.
 * The charts' libraries are loaded on the first call.
 */
export async function yearHtml(
  result: YearResult,
  units: UnitSystem,
  settings: YearPageSettings = {},
): Promise<string> {
  const { yearPage } = await import('../report.js');
  return yearPage(result, units, settings);
}

/** The report of several designs side by side, the first being the base; otherwise as `yearHtml`. */
export async function compareHtml(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  settings: ComparePageSettings = {},
): Promise<string> {
  const { comparePage } = await import('../report.js');
  return comparePage(designs, answer, units, settings);
}
