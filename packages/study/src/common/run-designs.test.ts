import { join } from 'node:path';
import { loadSite, type Site } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { expect, test } from 'vitest';
import { figuresUnder } from '../year-figures.js';
import { beginYears, createCommonRun, longest, mayGrow } from './common-run.js';
import { commonYears } from './common-years.js';
import { runUntilClear } from './run-designs.js';

const { base, variants } = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const designs = [
  { name: 'base', site: base },
  { name: 'fixed', site: variants.get('fixed')! },
];

test('years are added only where nobody named a number, there is something to compare, and years can be made', () => {
  expect(mayGrow(designs, {})).toBe(true);
  expect(mayGrow(designs, { years: 5 })).toBe(false);
  expect(mayGrow(designs.slice(0, 1), {})).toBe(false);
  const twoFiles = { ...base, weather: { file: 'a.csv', otherYears: ['b.csv'] } } as unknown as Site;
  expect(
    mayGrow(
      designs.map(({ name }) => ({ name, site: twoFiles })),
      {},
    ),
  ).toBe(false);
  expect(longest({ seed: 3 })).toEqual({ seed: 3, years: 100 });
});

test('a run may be lengthened: each year is run once and told as it is done', async () => {
  const told: number[][] = [];
  const run = createCommonRun(designs, { years: 3, seed: 4, workers: 1, onYear: (...of) => told.push(of) });
  expect(run.weather).toMatchObject({ count: 3, kind: 'resampled' });
  await run.reach(1);
  expect(run.soFar().designs.map(({ years }) => years.length)).toEqual([1, 1]);
  await run.reach(3);
  const { weather, designs: ran } = run.soFar();
  expect(weather.count).toBe(3);
  expect(weather).not.toHaveProperty('weatherOf');
  expect(ran.map(({ name, years }) => [name, years.length])).toEqual([
    ['base', 3],
    ['fixed', 3],
  ]);
  expect(told).toEqual([
    [1, 1],
    [2, 3],
    [3, 3],
  ]);
  // Each design in each year is what it does there by itself.
  const third = commonYears(base, { years: 3, seed: 4 }).weatherOf(2);
  expect(ran[1]!.years[2]).toEqual(figuresUnder(variants.get('fixed')!, third, new PreparedCache()));
});

test('with a number of years asked for, no more are run to tell the best', async () => {
  const run = await runUntilClear(designs, { years: 1, workers: 1 });
  expect([run.weather.count, run.designs[0]!.years.length]).toEqual([1, 1]);
});

test('no years are begun beforehand where threads are not worth their cost', () => {
  expect(beginYears([], {})).toBeNull();
  expect(beginYears(designs, { years: 1, workers: 8 })).toBeNull();
  // 29 years of two designs are 58 of the 60 that are worth threads.
  expect(beginYears(designs, { years: 29, workers: 8 })).toBeNull();
  expect(beginYears(designs, { years: 100, workers: 1 })).toBeNull();
});
