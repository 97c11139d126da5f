import type { SiteFile } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { workerData } from 'piscina';
import type { DesignAxis } from '../design/axis.js';
import { sweepDesign } from './design.js';
import type { SweepRow } from './row.js';

/** What a worker is given once, at its start. */
export interface SweepWorkerStart {
  site: SiteFile;
  axes: readonly DesignAxis[];
}

const { site, axes } = workerData as SweepWorkerStart;
const prepared = new PreparedCache();

/** Runs the designs of the given numbers. Each worker keeps what it prepared for the designs it has run. */
export default function runDesigns(numbers: readonly number[]): SweepRow[] {
  return numbers.map((number) => sweepDesign(site, axes, number, prepared));
}
