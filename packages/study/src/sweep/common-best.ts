import { changedDesign, type SiteFile } from '@wintergap/site';
import { type CommonAnswer, commonAnswer } from '../common/common-answer.js';
import type { CommonWish } from '../common/common-wish.js';
import { runDesigns } from '../common/run-designs.js';
import type { DesignAxis } from '../design/axis.js';
import { gridChanges, gridDesign } from '../design/grid.js';
import type { SweepSummary } from './best.js';

/**
 * The best designs of a sweep, those of each ranking once, run through common weather years: which of them lead, and which
 * chance does not tell apart. Names are the designs' numbers. `null` when there is no best design.
 */
export async function commonBest(
  site: SiteFile,
  axes: readonly DesignAxis[],
  { best }: SweepSummary,
  wish: CommonWish = {},
): Promise<CommonAnswer | null> {
  const numbers = [...new Set(Object.values(best).flatMap((rows) => rows.map(({ number }) => number)))];
  if (numbers.length === 0) return null;
  const designs = numbers
    .sort((a, b) => a - b)
    .map((number) => {
      const { changes, variant } = gridChanges(axes, gridDesign(axes, number).values);
      return { name: String(number), site: changedDesign(site, changes, variant) };
    });
  return commonAnswer(await runDesigns(designs, wish));
}
