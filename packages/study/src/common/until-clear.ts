import { type DesignYears, moreYearsCouldTell } from './merit.js';

/** Most years that are run of their own accord where fewer leave the best in doubt. */
export const mostCommonYears = 100;

/** Designs that are run through more and more of their common years; those that were run are kept. */
export interface Growing<Run extends { designs: readonly DesignYears[] }> {
  /** Runs the years that are missing up to `count`. */
  reach(count: number): Promise<void>;
  /** The designs over the years that were run. */
  soFar(): Run;
}

/**
 * Runs designs until the best of them is told from the others, or as far as `mostCommonYears`.
 *
 * @param count years to begin with; doubled while they leave the best in doubt
 * @param leftOut names of designs that are only shown: which of them would be best is no question
 */
export async function untilClear<Run extends { designs: readonly DesignYears[] }>(
  run: Growing<Run>,
  count: number,
  leftOut: readonly string[] = [],
): Promise<Run> {
  for (let years = count; ; years *= 2) {
    await run.reach(Math.min(years, mostCommonYears));
    const soFar = run.soFar();
    const ranked = soFar.designs.filter(({ name }) => !leftOut.includes(name));
    if (years >= mostCommonYears || !moreYearsCouldTell(ranked)) return soFar;
  }
}
