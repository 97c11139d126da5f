import * as z from 'zod';
import { type DesignOrder, designCount, type Positions, partPositions, type SweepPart } from '../design/order.js';
import type { SweepPlan } from './plan.js';
import type { SweepColumns } from './row.js';

/** The first line of a sweep's file: which sweep it is, and which of its designs belong in this file. */
export interface SweepHeader {
  /** Name of the site. */
  site: string;
  fingerprint: string;
  order: DesignOrder;
  part: SweepPart;
  /** Paths of the axes, in the order of the columns. */
  axes: readonly string[];
  columns: SweepColumns;
}

export const planHeader = ({ site, fingerprint, order, part, axes, columns }: SweepPlan): SweepHeader => ({
  site: site.base.name,
  fingerprint,
  order,
  part,
  axes: axes.map(({ path }) => path),
  columns,
});

/** The header as JSON on one line; in a CSV file it stands behind `# `. */
export function headerText({ site, fingerprint, order, part, axes, columns }: SweepHeader): string {
  return JSON.stringify({
    sweep: fingerprint,
    site,
    grid: order.gridSize,
    sample: order.sample,
    part: `${part.index}/${part.of}`,
    axes,
    cost: columns.cost,
    years: columns.years,
  });
}

const natural = z.int().min(1);
const schema = z.object({
  sweep: z.string().regex(/^[0-9a-f]{32}$/),
  site: z.string(),
  grid: natural,
  sample: z.object({ count: natural, seed: z.int().min(0) }).nullable(),
  part: z.string().regex(/^\d+\/\d+$/),
  axes: z.array(z.string()),
  cost: z.boolean(),
  years: z.object({ count: natural, seed: z.int().min(0) }).nullable(),
});

/** Reads a header; `null` when the line is none. */
export function readHeader(line: string): SweepHeader | null {
  let written: unknown;
  try {
    written = JSON.parse(line.replace(/^# /, ''));
  } catch {
    return null;
  }
  const result = schema.safeParse(written);
  if (!result.success) return null;
  const { sweep, site, grid, sample, axes, cost, years } = result.data;
  const [index = 0, of = 0] = result.data.part.split('/').map(Number);
  if (index < 1 || index > of || (sample !== null && sample.count > grid)) return null;
  return {
    site,
    fingerprint: sweep,
    order: { gridSize: grid, sample },
    part: { index, of },
    axes,
    columns: { cost, years },
  };
}

/** The positions that a file with this header holds when it is complete. */
export const headerPositions = ({ order, part }: SweepHeader): Positions => partPositions(designCount(order), part);
