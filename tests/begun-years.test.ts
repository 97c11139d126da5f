import { loadSite, type Site } from '@wintergap/site';
import { beginYears, type CommonWish, mostCommonYears, type NamedSite, runDesigns } from '@wintergap/study';
import { expect, test, vi } from 'vitest';
import { createCommonRun } from '../packages/study/src/common/common-run.js';

const site = loadSite(new URL('../examples/kettle-pond.yaml', import.meta.url).pathname);
const designs: NamedSite[] = [
  { name: 'base', site: site.base },
  { name: 'more foam', site: site.variants.get('more foam')! },
];
const wish = { years: 33 };

test('years that other threads began are the years that one thread runs, whatever this one does meanwhile', async () => {
  const begun = beginYears(designs, { ...wish, workers: 3 });
  // Threads have years done before this one has asked for any.
  await vi.waitUntil(() => begun!.done > 0, { timeout: 60_000 });
  const told: number[] = [];
  const onYear = (done: number) => told.push(done);
  const run = await runDesigns(designs, { ...wish, workers: 3, begun, onYear });
  expect(run).toEqual(await runDesigns(designs, { ...wish, workers: 1 }));
  expect(told).toEqual(Array.from(told, (_, i) => i + told[0]!));
  expect(told.at(-1)).toBe(33);
});

test('years that were begun are lengthened as any are', async () => {
  const three = [...designs, { name: 'fixed', site: site.variants.get('fixed')! }];
  const grown = async (wish: CommonWish) => {
    const run = createCommonRun(three, { ...wish, years: mostCommonYears });
    for (const count of [25, 28]) await run.reach(count);
    return run.soFar();
  };
  const threads = await grown({ workers: 2, begun: beginYears(three, { workers: 2 }) });
  expect(threads.weather.count).toBe(28);
  expect(threads).toEqual(await grown({ workers: 1 }));
});

test('threads are not begun for few years, nor for one thread', () => {
  expect(beginYears(designs, { years: 25, workers: 2 })).toBe(null);
  expect(beginYears(designs, { ...wish, workers: 1 })).toBe(null);
  expect(beginYears(designs, { years: 1, workers: 2 })).toBe(null);
});

test('a design that cannot be run fails with its own error, though a thread met it first', async () => {
  const lost = { ...site.base, weather: { file: { path: '/nowhere/at-all.csv', written: 'at-all.csv' } } } as Site;
  const two = [...designs, { name: 'lost', site: lost }];
  const begun = beginYears(two, { ...wish, workers: 2 });
  await expect(runDesigns(two, { ...wish, workers: 2, begun })).rejects.toThrow('at-all.csv');
});
