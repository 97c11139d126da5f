import { changedDesign, type SiteFile } from '@wintergap/site';
import { type CommonAnswer, type CommonFigures, commonAnswer } from '../common/common-answer.js';
import type { CommonWish } from '../common/common-wish.js';
import { runDesigns } from '../common/run-designs.js';
import type { DesignAxis } from '../design/axis.js';
import { gridChanges, gridDesign } from '../design/grid.js';
import type { SweepSummary } from './best.js';

/** The best designs of a sweep over common years. */
export interface CommonBest extends CommonAnswer {
  /** The site's base design over the same years, to hold them against; it is not among them. */
  base: CommonFigures;
}

/**
 * The best designs of a sweep, those of each ranking once, run through common weather years: which of them lead, and which
 * chance does not tell apart, beside the base design. Names are the designs' numbers. `null` when there is no best design.
 */
export async function commonBest(
  site: SiteFile,
  axes: readonly DesignAxis[],
  { best }: SweepSummary,
  wish: CommonWish = {},
): Promise<CommonBest | null> {
  const numbers = [...new Set(Object.values(best).flatMap((rows) => rows.map(({ number }) => number)))];
  if (numbers.length === 0) return null;
  const designs = numbers
    .sort((a, b) => a - b)
    .map((number) => {
      const { changes, variant } = gridChanges(axes, gridDesign(axes, number).values);
      return { name: String(number), site: changedDesign(site, changes, variant) };
    });
  const { weather, designs: ran } = await runDesigns([...designs, { name: 'base', site: site.base }], wish);
  const [base] = commonAnswer({ weather, designs: ran.slice(-1) }).designs;
  return { ...commonAnswer({ weather, designs: ran.slice(0, -1) }), base: base! };
}
