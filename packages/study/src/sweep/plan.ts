import type { SiteFile } from '@wintergap/site';
import type { DesignAxis } from '../design/axis.js';
import {
  type DesignOrder,
  designCount,
  numberAt,
  type Positions,
  partPositions,
  type SweepPart,
} from '../design/order.js';
import { sweepFingerprint } from './fingerprint.js';
import { readSweep } from './section.js';

/** All that decides what a sweep's file holds. */
export interface SweepPlan {
  site: SiteFile;
  axes: readonly DesignAxis[];
  order: DesignOrder;
  part: SweepPart;
  /** The positions of this part. */
  positions: Positions;
  /** Tells this sweep from any other; see `sweepFingerprint`. */
  fingerprint: string;
}

/**
 * Plans the sweep that a site file describes, or one part of it.
 *
 * @throws SiteError when the `sweep` section is not right, OutOfRangeError when there is no such part
 */
export function planSweep(site: SiteFile, part: SweepPart): SweepPlan {
  const { axes, order } = readSweep(site);
  const positions = partPositions(designCount(order), part);
  return { site, axes, order, part, positions, fingerprint: sweepFingerprint(site) };
}

/** Number of the design at a position of the sweep. */
export const plannedNumber = ({ order }: SweepPlan, position: number): number => numberAt(order, position);
