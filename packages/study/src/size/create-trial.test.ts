import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { expect, test } from 'vitest';
import { commonYears } from '../common/common-years.js';
import { figuresUnder } from '../year-figures.js';
import { createTrial } from './trial.js';

const { base } = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const judged = { kind: 'usual', years: 3, seed: 4 } as const;

test('a design that keeps its targets is run through all years, and these are the common ones', () => {
  const trial = createTrial(base, judged, { generatorHours: 8760, darkHours: 8760 });
  expect(trial.weather).toEqual({ count: 3, kind: 'resampled', spread: expect.anything() });
  const years = trial.run(base);
  expect(years).toHaveLength(3);
  expect(years[1]).toEqual(figuresUnder(base, commonYears(base, judged).weatherOf(1), new PreparedCache()));
  expect(trial.complete(base, years)).toEqual(years);
  expect(trial.complete(base, years, 2)).toEqual(years.slice(0, 2));
  expect(trial.complete(base, years, 12)).toHaveLength(3);
});

// Of three years the second past a target puts the median past it.
test('a design is given up as soon as its usual year must miss one of its targets, and can be run to the end', () => {
  const trial = createTrial(base, judged, { generatorHours: 0, darkHours: 8760 });
  const run = trial.run(base);
  expect(run).toHaveLength(2);
  const all = trial.complete(base, run);
  expect(all).toHaveLength(3);
  expect(all.slice(0, 2)).toEqual(run);
  expect(all[2]!.generatorHours).toBeGreaterThan(0);
});

test('a year that is just at its target does not pass it', () => {
  const [first] = createTrial(base, { ...judged, years: 1 }, { generatorHours: 8760 }).run(base);
  const { autonomyDays } = first!;
  expect(createTrial(base, { ...judged, years: 2 }, { autonomyDays }).run(base)).toHaveLength(2);
});
