import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { wholeSweep } from '../design/order.js';
import { openSweepFile } from './file.js';
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

test('a sweep goes on in regular files alone, and a place that cannot be written is told', async () => {
  mkdirSync(join(folder, 'folder.csv'));
  await expect(run(join(folder, 'folder.csv'), plan())).rejects.toThrow('is no regular file');
  writeFileSync(join(folder, 'flat'), '');
  await expect(run(join(folder, 'flat', 'deep.csv'), plan())).rejects.toThrow('deep.csv: cannot be read or written');
  // A folder that is not there yet is made.
  await run(join(folder, 'new', 'made.csv'), plan());
  expect(readFileSync(join(folder, 'new', 'made.csv'), 'utf8').split('\n')).toHaveLength(15);
});

test('a file is held while rows are written to it, and let go when it cannot be opened', async () => {
  const path = join(folder, 'held.csv');
  const file = await openSweepFile(path, plan(), () => {});
  await expect(openSweepFile(path, plan(), () => {})).rejects.toThrow('has been writing it since');
  file.close();
  await run(path, plan());
  await expect(run(path, plan(wholeSweep, 'd'.repeat(32)))).rejects.toThrow('sweep of other designs');
  expect(await run(path, plan())).toHaveLength(12);
});

test('parts are of the format of the joined file, and it is none of them', async () => {
  const path = (name: string) => join(folder, name);
  await run(path('only.csv'), plan());
  const joining = (out: string, ...names: string[]) => joinSweep(path(out), names.map(path), () => {});
  await expect(joining('only.csv', 'only.csv')).rejects.toThrow('is a part and cannot be the joined file too');
  await expect(joining('all.ndjson', 'only.csv')).rejects.toThrow('only.csv: is not of the format of');
  await expect(joining('all.txt', 'only.csv')).rejects.toThrow('ends in .csv or .ndjson');
  await expect(joining('all.csv', 'missing.csv')).rejects.toThrow('missing.csv: cannot be read');
  writeFileSync(path('empty.csv'), '');
  await expect(joining('all.csv', 'empty.csv')).rejects.toThrow('empty.csv: is not the file of a sweep');
});

test('a joined file is written whole or not at all', async () => {
  await run(join(folder, 'whole-1.csv'), plan({ index: 1, of: 2 }));
  await run(join(folder, 'short-2.csv'), plan({ index: 2, of: 2 }), 3);
  const parts = ['whole-1.csv', 'short-2.csv'].map((name) => join(folder, name));
  const out = join(folder, 'half.csv');
  await expect(joinSweep(out, parts, () => {})).rejects.toThrow('holds 3 of its 6 designs');
  expect(readdirSync(folder).filter((name) => name.startsWith('half.csv'))).toEqual([]);
  const nowhere = join(folder, 'nowhere', 'all.csv');
  await run(join(folder, 'all-there.csv'), plan());
  await expect(joinSweep(nowhere, [join(folder, 'all-there.csv')], () => {})).rejects.toThrow('cannot be written');
});

test('several gaps and doubles are all told, and a part within another is there twice', async () => {
  for (const [name, index, of] of [
    ['of-6-2.csv', 2, 6],
    ['of-6-5.csv', 5, 6],
    ['of-2-1.csv', 1, 2],
  ] as const) {
    await run(join(folder, name), plan({ index, of }));
  }
  const joining = (...names: string[]) =>
    joinSweep(
      join(folder, 'gaps.csv'),
      names.map((name) => join(folder, name)),
      () => {},
    );
  // Parts 2 and 5 of 6 hold designs 3, 4 and 9, 10.
  await expect(joining('of-6-2.csv', 'of-6-5.csv')).rejects.toThrow(
    /designs 1 to 2 .* missing[\s\S]*designs 5 to 8 .* missing[\s\S]*designs 11 to 12 .* missing/,
  );
  await expect(joining('of-2-1.csv', 'of-6-2.csv')).rejects.toThrow(
    /designs 3 to 4 of the sweep are there twice, in .*of-2-1.csv and .*of-6-2.csv[\s\S]*designs 7 to 12/,
  );
});

test('a file with other columns under the same sweep is not gone on with', async () => {
  const path = join(folder, 'columns.csv');
  await run(path, plan());
  const [head, columns, ...rows] = readFileSync(path, 'utf8').split('\n');
  writeFileSync(path, [head, columns!.replace('starts', 'begins'), ...rows].join('\n'));
  await expect(run(path, plan())).rejects.toThrow('columns.csv line 2: found other columns');
});
