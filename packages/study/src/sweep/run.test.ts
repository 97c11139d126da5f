import type { SiteFile } from '@wintergap/site';
import { expect, test } from 'vitest';
import type { DesignAxis } from '../design/axis.js';
import { gridSize } from '../design/grid.js';
import type { SweepPlan } from './plan.js';
import type { SweepRow } from './row.js';
import { runSweep } from './run.js';

/** A site that no design can be made of: each comes back at once as a row that says why. */
const site = { base: { arrays: [] } } as unknown as SiteFile;
const axis = (path: string, count: number): DesignAxis => ({
  path,
  values: Array.from({ length: count }, (_, i) => i),
});
const columns = { cost: false, years: null };

/** The rows of a plan run in this thread, batch by batch. */
async function batches(
  axes: DesignAxis[],
  from = 0,
  sample: SweepPlan['order']['sample'] = null,
): Promise<SweepRow[][]> {
  const order = { gridSize: gridSize(axes), sample };
  const to = sample?.count ?? order.gridSize;
  const taken: SweepRow[][] = [];
  const plan = { site, axes, columns, order, positions: { from: 0, to } } as unknown as SweepPlan;
  await runSweep(plan, from, 1, (rows) => taken.push([...rows]));
  return taken;
}
const sizes = async (...asked: Parameters<typeof batches>) => (await batches(...asked)).map((rows) => rows.length);

test('designs come in the order of the plan, each once, from where the file ends', async () => {
  const rows = (await batches([axis('arrays.0.strings', 2), axis('bank.capacity', 4)], 3)).flat();
  expect(rows.map(({ number }) => number)).toEqual([4, 5, 6, 7, 8]);
  expect(rows.every(({ results, error }) => results === null && error !== '')).toBe(true);
  expect(await batches([axis('bank.capacity', 4)], 4)).toEqual([]);
});

// Eight batches for a worker are an even share: of 162 designs 21, of 150 designs 19.
test('a batch is an even share in whole blocks of designs that differ in bank or engine alone', async () => {
  expect(await sizes([axis('arrays.0.strings', 54), axis('bank.capacity', 3)])).toEqual([
    21, 21, 21, 21, 21, 21, 21, 15,
  ]);
  expect(await sizes([axis('arrays.0.strings', 50), axis('bank.capacity', 3)])).toEqual([
    18, 18, 18, 18, 18, 18, 18, 18, 6,
  ]);
});

test('blocks larger than an even share are kept whole where there are two for each worker', async () => {
  expect(await sizes([axis('arrays.0.strings', 2), axis('bank.capacity', 4)])).toEqual([4, 4]);
  // From the second block on there is one: the even share of four is a half, so one by one.
  expect(await sizes([axis('arrays.0.strings', 2), axis('bank.capacity', 4)], 4)).toEqual([1, 1, 1, 1]);
});

test('the designs of a sample are no neighbours, and no batch is larger than 64', async () => {
  const axes = [axis('arrays.0.strings', 20), axis('bank.capacity', 30)];
  expect(await sizes(axes, 0, { count: 15, seed: 1 })).toEqual([2, 2, 2, 2, 2, 2, 2, 1]);
  expect((await sizes([axis('arrays.0.strings', 520)])).slice(0, 2)).toEqual([64, 64]);
});
