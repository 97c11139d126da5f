import type { SiteFile } from '@wintergap/site';
import { gridDesign } from '../design/grid.js';
import { designCount, numberAt, partPositions, type SweepPart, wholeSweep } from '../design/order.js';
import { openSweepFile } from './file.js';
import type { SweepPlan } from './plan.js';
import { resultColumns, type SweepResults, type SweepRow } from './row.js';

const axes = [
  { path: 'arrays.0.strings', values: [2, 3, 4] },
  { path: 'bank.capacity', values: ['500 Ah', '1000 Ah', '2000 Ah', '1 "A", or so'] },
];

/** A plan without a site to run: rows are made up from the number alone. */
export function plan(
  part: SweepPart = wholeSweep,
  fingerprint = 'f'.repeat(32),
  sample: SweepPlan['order']['sample'] = null,
) {
  const order = { gridSize: 12, sample };
  const site = { base: { name: 'Otter Bend' } } as SiteFile;
  const columns = { cost: false, years: null };
  const positions = partPositions(designCount(order), part);
  return { site, axes, order, part, columns, positions, unpriced: [], unpricedApart: [], fingerprint };
}

function madeUpRow(number: number): SweepRow {
  const design = gridDesign(axes, number);
  if (number % 5 === 0)
    return { ...design, results: null, limits: [], error: `bank.capacity: found "1 A", in design ${number}` };
  const results = Object.fromEntries(resultColumns.map((name, i) => [name, Math.sin(number + i)])) as SweepResults;
  return { ...design, results, limits: [], error: '' };
}

/** Runs what is left of a plan, as far as `most` rows; returns the numbers that were there. */
export async function run(path: string, of: SweepPlan, most = Infinity): Promise<number[]> {
  const there: number[] = [];
  const file = await openSweepFile(path, of, ({ number }) => there.push(number));
  if (file.done !== there.length) throw new Error(`${file.done} rows are done and ${there.length} were told`);
  for (let at = of.positions.from + file.done, n = 0; at < of.positions.to && n < most; at++, n++) {
    file.append([madeUpRow(numberAt(of.order, at))]);
  }
  file.close();
  return there;
}
