import { type CarryStudy, rivalDesigns } from '@wintergap/seasonal';
import { type CommonAnswer, commonAnswer } from '../common/common-answer.js';
import type { CommonWish } from '../common/common-wish.js';
import { runDesigns } from '../common/run-designs.js';
import { type SnowRange, snowCovers, snowRange } from '../common/snow-range.js';

/** The rivals of a seasonal store over common years, the design as it is first. */
export interface CommonRivals {
  common: CommonAnswer;
  /** What snow could turn; `null` where it covers no array. */
  snow: SnowRange | null;
}

/** The design as it stands, among its rivals. */
const asItIsName = 'as it is';

/**
 * Runs the rivals of a seasonal store through common years, the same for each: one year says little of what a change saves.
 * `null` when there are none.
 */
export async function commonRivals(
  { asItIs, rivals }: CarryStudy,
  wish: CommonWish = {},
): Promise<CommonRivals | null> {
  const tried = new Set(rivals.map(({ name }) => name));
  const changed = rivalDesigns(asItIs).filter(({ name }) => tried.has(name));
  if (changed.length === 0) return null;
  const designs = [{ name: asItIsName, site: asItIs.site }, ...changed.map(({ name, site }) => ({ name, site }))];
  const common = commonAnswer(await runDesigns(designs, wish));
  const { onYear: _, ...quiet } = wish;
  const snow = snowCovers([asItIs]) ? await snowRange(designs, common.leaders, quiet) : null;
  return { common, snow };
}
