import { snowExtremes } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import type { CommonRun, CommonWish, NamedSite } from './common-wish.js';
import { type DesignYears, leadersOf } from './merit.js';
import { runDesigns } from './run-designs.js';

/**
 * What becomes of a comparison where snow never covers the arrays, and where it covers them whole at any tilt: between
 * these the truth lies, and no weather file says where.
 */
export interface SnowRange {
  none: ExtremeAnswer;
  full: ExtremeAnswer;
  /** Leaders of the comparison that lead whatever the snow does; empty where the ranking hangs on it. */
  steady: string[];
}

/** What common years say in one extreme, and the years themselves. */
export interface ExtremeAnswer {
  run: CommonRun;
  leaders: string[];
}

/** Years behind the two extremes: enough to see whether an answer turns. */
export const snowYears = 12;

/** Whether snow ever lies on an array of these designs, as far as their file's year shows. */
export const snowCovers = (results: readonly YearResult[]): boolean =>
  results.some(({ arrays }) => arrays.some(({ snowShare }) => snowShare?.some((share) => share > 0) ?? false));

/**
 * Runs the designs of a comparison without snow on the arrays and with full cover.
 *
 * @param leaders of the comparison with snow as the site file has it
 */
export async function snowRange(
  designs: readonly NamedSite[],
  leaders: readonly string[],
  { years, ...wish }: CommonWish = {},
): Promise<SnowRange> {
  // One run for both: in each year they share all but the snow on the arrays.
  const extremes = (['none', 'full'] as const).flatMap((which) =>
    designs.map(({ name, site }) => ({ name, site: snowExtremes(site)[which] })),
  );
  const run = await runDesigns(extremes, { ...wish, years: Math.min(years ?? snowYears, snowYears) });
  const answerOf = (ran: DesignYears[]): ExtremeAnswer => ({
    run: { ...run, designs: ran },
    leaders: leadersOf(ran).map(({ name }) => name),
  });
  const none = answerOf(run.designs.slice(0, designs.length));
  const full = answerOf(run.designs.slice(designs.length));
  const steady = leaders.filter((name) => none.leaders.includes(name) && full.leaders.includes(name));
  return { none, full, steady };
}
