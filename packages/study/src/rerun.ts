import type { Site } from '@wintergap/site';
import { StageCache, simulateSite, type YearResult } from '@wintergap/year';

/** Runs the year of a changed design. */
export type Rerun = (site: Site) => YearResult;

/**
 * A runner for one site file, whose designs share what they have in common.
 *
 * @param siteFile the site file, which relative paths count from
 * @param onRun called after every year run
 */
export function rerunOf(siteFile: string, onRun: () => void = () => {}, stages = new StageCache()): Rerun {
  return (site) => {
    const result = simulateSite(site, siteFile, stages);
    onRun();
    return result;
  };
}
