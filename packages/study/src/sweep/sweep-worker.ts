import type { SiteFile } from '@wintergap/site';
import { StageCache } from '@wintergap/year';
import { workerData } from 'piscina';
import type { DesignAxis } from '../design/axis.js';
import { sweepDesign } from './design.js';
import type { SweepRow } from './row.js';

/** What a worker is given once, at its start: plain values, since a site's places of values cannot be passed on. */
export interface SweepWorkerStart {
  site: Omit<SiteFile, 'document'>;
  content: Record<string, unknown>;
  axes: readonly DesignAxis[];
}

const { site, content, axes } = workerData as SweepWorkerStart;
const document = { file: site.file, content, locate: () => ({ line: 0, column: 0 }) };
const stages = new StageCache();

/** Runs the designs of the given numbers. Each worker keeps the stages of the designs it has run. */
export default function runDesigns(numbers: readonly number[]): SweepRow[] {
  return numbers.map((number) => sweepDesign({ ...site, document }, axes, number, stages));
}
