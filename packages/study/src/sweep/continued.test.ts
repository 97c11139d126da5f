import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { wholeSweep } from '../design/order.js';
import { joinSweep } from './join.js';
import { plan, run } from './made-up-sweep.fixture.js';

const folder = mkdtempSync(join(tmpdir(), 'sweep-continued-'));
afterAll(() => rmSync(folder, { recursive: true }));

for (const format of ['csv', 'ndjson']) {
  test(`a ${format} file cut anywhere is continued to the same bytes`, async () => {
    const whole = join(folder, `whole.${format}`);
    await run(whole, plan());
    const bytes = readFileSync(whole);
    const path = join(folder, `cut.${format}`);
    for (let length = 0; length <= bytes.length; length++) {
      // Around every end of a line, and often enough between them.
      const nearEnd = bytes.subarray(Math.max(length - 2, 0), length + 2).includes(10);
      if (!nearEnd && length % 13 !== 0) continue;
      writeFileSync(path, bytes.subarray(0, length));
      await run(path, plan());
      expect(readFileSync(path).equals(bytes), `cut at byte ${length}`).toBe(true);
    }
    expect(await run(whole, plan())).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });
}

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
