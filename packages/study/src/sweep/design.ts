import { changedDesign, SiteError, type SiteFile } from '@wintergap/site';
import { WeatherError } from '@wintergap/weather';
import { type PreparedCache, simulateSite } from '@wintergap/year';
import type { DesignAxis } from '../design/axis.js';
import { gridChanges, gridDesign } from '../design/grid.js';
import { type SweepRow, sweepResults } from './row.js';
import { siteErrorText } from './values.js';

/** Runs one design of a sweep. What is wrong with the design becomes the row's `error`; nothing is thrown. */
export function sweepDesign(
  site: SiteFile,
  axes: readonly DesignAxis[],
  number: number,
  prepared: PreparedCache,
): SweepRow {
  const design = gridDesign(axes, number);
  try {
    const { changes, variant } = gridChanges(axes, design.values);
    const { summary } = simulateSite(changedDesign(site, changes, variant), prepared);
    return { ...design, results: sweepResults(summary), error: '' };
  } catch (error) {
    return { ...design, results: null, error: errorText(error) };
  }
}

function errorText(error: unknown): string {
  if (error instanceof SiteError) return siteErrorText(error);
  if (error instanceof WeatherError) return error.message;
  return `fault of the program: ${error instanceof Error ? error.message : String(error)}`;
}
