import { appendFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SiteFile } from '@wintergap/site';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { gridDesign } from '../design/grid.js';
import { designCount, numberAt, partPositions, type SweepPart, wholeSweep } from '../design/order.js';
import { openSweepFile } from './file.js';
import { joinSweep } from './join.js';
import type { SweepPlan } from './plan.js';
import { resultColumns, type SweepResults, type SweepRow } from './row.js';

const folder = mkdtempSync(join(tmpdir(), 'sweep-file-'));
afterAll(() => rmSync(folder, { recursive: true }));

const axes = [
  { path: 'arrays.0.strings', values: [2, 3, 4] },
  { path: 'bank.capacity', values: ['500 Ah', '1000 Ah', '2000 Ah', '1 "A", or so'] },
];

/** A plan without a site to run: rows are made up from the number alone. */
function plan(part: SweepPart = wholeSweep, fingerprint = 'f'.repeat(32), sample: SweepPlan['order']['sample'] = null) {
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
async function run(path: string, of: SweepPlan, most = Infinity): Promise<number[]> {
  const there: number[] = [];
  const file = await openSweepFile(path, of, ({ number }) => there.push(number));
  expect(file.done).toBe(there.length);
  for (let at = of.positions.from + file.done, n = 0; at < of.positions.to && n < most; at++, n++) {
    file.append([madeUpRow(numberAt(of.order, at))]);
  }
  file.close();
  return there;
}

for (const format of ['csv', 'ndjson']) {
  test(`a ${format} file cut anywhere is continued to the same bytes`, async () => {
    const whole = join(folder, `whole.${format}`);
    await run(whole, plan());
    const bytes = readFileSync(whole);
    const path = join(folder, `cut.${format}`);
    for (let length = 0; length <= bytes.length; length++) {
      // Around every end of a line, and often enough between them.
      const nearEnd = bytes.subarray(Math.max(length - 2, 0), length + 2).includes(10);
      if (!nearEnd && length % 101 !== 0) continue;
      writeFileSync(path, bytes.subarray(0, length));
      await run(path, plan());
      expect(readFileSync(path).equals(bytes), `cut at byte ${length}`).toBe(true);
    }
    expect(await run(whole, plan())).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });
}

test('parts join to the bytes of one run, in whatever order they are named', async () => {
  const whole = join(folder, 'one-run.csv');
  await run(whole, plan());
  const parts = [3, 1, 2, 5, 4].map((index) => ({ index, of: 5 }));
  const paths = parts.map(({ index }) => join(folder, `part-${index}.csv`));
  for (const [i, part] of parts.entries()) await run(paths[i]!, plan(part));
  const joined = join(folder, 'joined.csv');
  const seen: number[] = [];
  await joinSweep(joined, paths, ({ number }) => seen.push(number));
  expect(readFileSync(joined).equals(readFileSync(whole))).toBe(true);
  expect(seen).toEqual(Array.from({ length: 12 }, (_, i) => i + 1));
});

test('any sample in any number of parts joins to the bytes of one run', async () => {
  const shape = fc.record({
    count: fc.integer({ min: 1, max: 12 }),
    seed: fc.nat(),
    of: fc.integer({ min: 1, max: 14 }),
  });
  await fc.assert(
    fc.asyncProperty(shape, async ({ count, seed, of }) => {
      const sample = { count, seed };
      const base = mkdtempSync(join(folder, 'sample-'));
      await run(join(base, 'whole.csv'), plan(wholeSweep, undefined, sample));
      const paths: string[] = [];
      for (let index = 1; index <= of; index++) {
        paths.push(join(base, `${index}.csv`));
        await run(paths[index - 1]!, plan({ index, of }, undefined, sample));
      }
      await joinSweep(join(base, 'joined.csv'), paths, () => {});
      expect(readFileSync(join(base, 'joined.csv')).equals(readFileSync(join(base, 'whole.csv')))).toBe(true);
    }),
    { numRuns: 20 },
  );
});

test('missing and doubled designs, unfinished parts and parts of another sweep are not joined', async () => {
  const path = (name: string) => join(folder, name);
  const out = path('not-written.csv');
  const joining = (...names: string[]) => joinSweep(out, names.map(path), () => {});
  for (const index of [1, 2, 3]) await run(path(`third-${index}.csv`), plan({ index, of: 3 }));
  await run(path('half-1.csv'), plan({ index: 1, of: 2 }));
  await run(path('other-2.csv'), plan({ index: 2, of: 3 }, 'e'.repeat(32)));
  await run(path('unfinished-3.csv'), plan({ index: 3, of: 3 }), 2);
  await expect(joining('third-1.csv', 'third-3.csv')).rejects.toThrow('designs 5 to 8 of the sweep are missing');
  await expect(joining('third-1.csv', 'third-2.csv')).rejects.toThrow('designs 9 to 12 of the sweep are missing');
  await expect(joining('half-1.csv', 'third-2.csv', 'third-3.csv')).rejects.toThrow(
    /designs 5 to 6 of the sweep are there twice, in .*half-1.csv and .*third-2.csv/,
  );
  await expect(joining('third-1.csv', 'other-2.csv')).rejects.toThrow('not of the same sweep');
  await expect(joining('third-1.csv', 'third-2.csv', 'unfinished-3.csv')).rejects.toThrow('holds 2 of its 4 designs');
  const torn = path('torn-3.csv');
  writeFileSync(torn, readFileSync(path('third-3.csv')));
  truncateSync(torn, readFileSync(torn).length - 1);
  await expect(joining('third-1.csv', 'third-2.csv', 'torn-3.csv')).rejects.toThrow('run this part again');
  expect(() => readFileSync(out)).toThrow('ENOENT');
});

test('a row that is there twice, left out or changed to nonsense is named by its line', async () => {
  const path = join(folder, 'edited.csv');
  await run(path, plan());
  const lines = readFileSync(path, 'utf8').split('\n');
  const edit = async (edited: string[]) => {
    writeFileSync(path, edited.join('\n'));
    await run(path, plan());
  };
  await expect(edit([...lines.slice(0, 4), ...lines.slice(3)])).rejects.toThrow(
    'line 5: found design 2, expected design 3',
  );
  await expect(edit([...lines.slice(0, 4), ...lines.slice(5)])).rejects.toThrow(
    'line 5: found design 4, expected design 3',
  );
  await expect(edit([...lines.slice(0, 4), 'nonsense', ...lines.slice(5)])).rejects.toThrow('line 5: is not a row');
  await expect(edit([...lines.slice(0, 14), lines[13]!, ''])).rejects.toThrow('line 15: design 12 is one too many');
});

for (const format of ['csv', 'ndjson']) {
  test(`an altered figure in a ${format} file is named by file and line, and not joined`, async () => {
    const path = join(folder, `altered.${format}`);
    await run(path, plan());
    const lines = readFileSync(path, 'utf8').split('\n');
    const row = format === 'csv' ? 5 : 4;
    const altered = lines.map((line, i) =>
      i === row - 1 ? line.replace(/0\.(\d)/, (_, d) => `0.${9 - Number(d)}`) : line,
    );
    expect(altered[row - 1]).not.toBe(lines[row - 1]);
    writeFileSync(path, altered.join('\n'));
    await expect(run(path, plan())).rejects.toThrow(`altered.${format} line ${row}: was altered`);
    const joining = joinSweep(join(folder, `not-joined.${format}`), [path], () => {});
    await expect(joining).rejects.toThrow(`altered.${format} line ${row}: was altered`);
  });
}

test('a file that is not of this sweep is left as it is', async () => {
  const path = join(folder, 'letter.csv');
  for (const content of ['to whom it may concern', 'a,b\n1,2\n3', `${'x'.repeat(70_000)}\n`.repeat(3)]) {
    writeFileSync(path, content);
    await expect(run(path, plan())).rejects.toThrow('not the file of a sweep');
    expect(readFileSync(path, 'utf8')).toBe(content);
  }
  await run(join(folder, 'first.csv'), plan({ index: 1, of: 2 }));
  appendFileSync(join(folder, 'first.csv'), 'torn');
  const before = readFileSync(join(folder, 'first.csv'), 'utf8');
  await expect(run(join(folder, 'first.csv'), plan({ index: 2, of: 2 }))).rejects.toThrow(
    'holds part 1/2 of this sweep',
  );
  await expect(run(join(folder, 'first.csv'), plan(wholeSweep, 'd'.repeat(32)))).rejects.toThrow(
    'sweep of other designs',
  );
  expect(readFileSync(join(folder, 'first.csv'), 'utf8')).toBe(before);
  await expect(run(join(folder, 'sweep.txt'), plan())).rejects.toThrow('ends in .csv or .ndjson');
});
