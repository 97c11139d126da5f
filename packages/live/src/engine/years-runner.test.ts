import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { commonAnswer, runDesigns } from '@wintergap/study';
import { expect, test } from 'vitest';
import { columnText, valueOfText } from '../hand-over/column-text.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { handOverOf } from '../hand-over/hand-over-of.js';
import { createYearsRunner, Superseded, type YearsAnswer } from './years-runner.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const years = 2;
// As it comes out of the page.
const handOver = valueOfText(columnText(handOverOf(site, { units: 'metric', years }))) as HandOver;
const setUps = [
  { name: 'base', change: {} },
  { name: 'fixed', change: handOver.variants.fixed! },
];

// A browser's own powers may differ from these in the last bit; in one engine nothing may.
test('what the page hands to its worker gives the common years of compare, to the last bit', async () => {
  const answers: YearsAnswer[] = [];
  await createYearsRunner(handOver)(
    setUps,
    (answer) => answers.push(answer),
    async () => {},
  );
  const designs = [
    { name: 'base', site: site.base },
    { name: 'fixed', site: site.variants.get('fixed')! },
  ];
  const last = answers.at(-1)!;
  expect(last).toMatchObject({ done: years, total: years, settled: true });
  expect(last.common).toEqual(commonAnswer(await runDesigns(designs, { years, workers: 1 })));
  expect(last.costs!.map(({ name, cost }) => [name, cost.perYear === null])).toEqual([
    ['base', false],
    ['fixed', false],
  ]);
});

test('years that were run are kept when something newer is asked for', async () => {
  const settle = createYearsRunner(handOver);
  let runs = 0;
  const stopAfter = (most: number) => async () => {
    runs++;
    if (runs === most) throw new Superseded();
  };
  await expect(settle(setUps, () => {}, stopAfter(3))).rejects.toThrow(Superseded);
  await settle(setUps, () => {}, stopAfter(0));
  expect(runs).toBe(years * setUps.length);
});
