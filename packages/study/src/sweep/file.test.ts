import { appendFileSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { wholeSweep } from '../design/order.js';
import { joinSweep } from './join.js';
import { plan, run } from './made-up-sweep.fixture.js';

const folder = mkdtempSync(join(tmpdir(), 'sweep-file-'));
afterAll(() => rmSync(folder, { recursive: true }));

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
