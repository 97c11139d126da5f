import { type Site, snowExtremes } from '@wintergap/site';
import { snowYears } from '../common/snow-range.js';
import { type Judged, judgedAgainst } from './judged.js';
import type { SizeQuestion } from './section.js';
import { judgedShare, type SizeTrial } from './trial.js';

/** A design's targets where snow never covers an array, and where it covers them whole at any tilt. */
export interface SnowTargets {
  none: Judged;
  full: Judged;
}

/** Runs a design through the first of the common years in both extremes of snow. */
export function snowTargets(site: Site, trial: SizeTrial, { judged, targets }: SizeQuestion): SnowTargets {
  const { none, full } = snowExtremes(site);
  const of = (extreme: Site) =>
    judgedAgainst(trial.complete(extreme, [], snowYears), targets, judgedShare[judged.kind]);
  return { none: of(none), full: of(full) };
}
