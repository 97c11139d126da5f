import type { Site } from '@wintergap/site';
import { PreparedCache, simulateSite, type YearResult } from '@wintergap/year';

/** Runs the year of a changed design. */
export type Rerun = (site: Site) => YearResult;

/**
 * A runner for designs of one place, which share what they have in common.
 *
 * @param onRun called after every year run
 */
export function rerunOf(onRun: () => void = () => {}, prepared: PreparedCache = new PreparedCache()): Rerun {
  return (site) => {
    const result = simulateSite(site, prepared);
    onRun();
    return result;
  };
}
