import { type Costs, lifeCycleOfYear, readCosts, unpricedNames } from '@wintergap/seasonal';
import type { SiteFile } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import type { DesignAxis } from '../design/axis.js';
import {
  type DesignOrder,
  designCount,
  numberAt,
  type Positions,
  partPositions,
  type SweepPart,
} from '../design/order.js';
import { unpricedApart } from '../design/unpriced-apart.js';
import { sectionError } from '../section-error.js';
import { sweepFingerprint } from './fingerprint.js';
import type { SweepColumns } from './row.js';
import { readSweep } from './section.js';

/** All that decides what a sweep's file holds. */
export interface SweepPlan {
  site: SiteFile;
  axes: readonly DesignAxis[];
  order: DesignOrder;
  part: SweepPart;
  /** The positions of this part. */
  positions: Positions;
  columns: SweepColumns;
  /** Names of things without a price that some of these designs have and others have not: they leave no cost to tell. */
  unpricedApart: string[];
  /** Names of things without a price that all of them have: no cost has them in it. */
  unpriced: string[];
  /** Tells this sweep from any other; see `sweepFingerprint`. */
  fingerprint: string;
}

/**
 * Plans the sweep that a site file describes, or one part of it.
 *
 * @param years adds to each row the means over so many common years
 * @throws SiteError when the `sweep` section is not right, or there are more parts than designs; OutOfRangeError when there
 * is no such part; WeatherError when the weather cannot be used
 */
export function planSweep(site: SiteFile, part: SweepPart, years: SweepColumns['years'] = null): SweepPlan {
  const { axes, order } = readSweep(site);
  const designs = designCount(order);
  if (part.of > designs) {
    throw sectionError(
      site,
      ['sweep'],
      `found ${designs} designs for ${part.of} parts, expected at most as many parts as designs`,
    );
  }
  const positions = partPositions(designs, part);
  const costs = readCosts(site);
  const apart = costs ? unpricedApart(site, axes, costs) : [];
  const unpriced = costs ? unpricedNames(site.base, costs) : [];
  const columns = { cost: costs !== null && apart.length === 0 && hasPrices(site, costs), years };
  return {
    site,
    axes,
    order,
    part,
    positions,
    columns,
    unpricedApart: apart,
    unpriced,
    fingerprint: sweepFingerprint(site, years),
  };
}

/** Number of the design at a position of the sweep. */
export const plannedNumber = ({ order }: SweepPlan, position: number): number => numberAt(order, position);

/** Whether the site file has all prices of a life-cycle cost. */
const hasPrices = (site: SiteFile, costs: Costs): boolean =>
  lifeCycleOfYear(simulateSite(site.base), costs).missing.length === 0;
