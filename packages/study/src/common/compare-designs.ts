import type { SiteFile } from '@wintergap/site';
import { type CommonAnswer, commonAnswer } from './common-answer.js';
import type { CommonWish, NamedSite } from './common-wish.js';
import { overLimits } from './over-limits.js';
import { runUntilClear } from './run-designs.js';

/** The base design of a site and its variants, the base first, as a comparison takes them. */
export const designsOf = ({ base, variants }: SiteFile): NamedSite[] =>
  [['base', base] as const, ...variants].map(([name, site]) => ({ name, site }));

/**
 * Compares designs of one place over common weather years: for each its usual and bad years, the mean difference from the
 * first with its standard error, and who leads beyond chance. A design over a calculated limit is shown and never leads.
 *
 * @param wish years, seed and threads; without years, as many as tell the best from the others, up to 100
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function compareDesigns(designs: readonly NamedSite[], wish: CommonWish = {}): Promise<CommonAnswer> {
  const leftOut = overLimits(designs, wish.prepared);
  return commonAnswer(await runUntilClear(designs, wish, leftOut), leftOut);
}
