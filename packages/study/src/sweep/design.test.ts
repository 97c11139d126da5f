import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { commonYears } from '../common/common-years.js';
import type { DesignAxis } from '../design/axis.js';
import { figuresUnder } from '../year-figures.js';
import { createSweepRunner } from './design.js';
import { type SweepColumns, sweepResults } from './row.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const runner = (axes: DesignAxis[], columns: SweepColumns = { cost: false, years: null }) =>
  createSweepRunner({ site, axes, columns });
const axis = (path: string, ...values: unknown[]): DesignAxis => ({ path, values });

test('a row has the figures of its design run by itself', () => {
  const run = runner([axis('variant', 'base', 'fixed')]);
  const row = run(2);
  expect([row.number, row.values, row.limits, row.error]).toEqual([2, ['fixed'], [], '']);
  expect(row.results).toEqual(sweepResults(simulateSite(site.variants.get('fixed')!)));
  expect(row.results).not.toHaveProperty('cost');
  expect(runner([axis('variant', 'base')], { cost: true, years: null })(1).results!.cost).toBeGreaterThan(0);
});

test('a design that cannot be built is a row that says why, by the path', () => {
  const row = runner([axis('bank.capacity', '1000 Ah', '5 m')])(2);
  expect([row.results, row.limits]).toEqual([null, []]);
  expect(row.error).toMatch(/^bank\.capacity: .*5 m/);
});

// Five modules in series have 199.5 V at 25 degC, and more in the cold; the controller bears 150 V.
test('a design over a limit is run, and the limits are named, each once', () => {
  const { limits, results } = runner([axis('arrays.0.inSeries', 5)])(1);
  expect(results).not.toBeNull();
  expect(limits).toContain('cold-voltage');
  expect(new Set(limits).size).toBe(limits.length);
});

test('means over common years are those of the years one by one', () => {
  const run = runner([axis('variant', 'base')], { cost: false, years: { count: 2, seed: 3 } });
  const { results } = run(1);
  const years = commonYears(site.base, { years: 2, seed: 3 });
  const prepared = new PreparedCache();
  const [one, two] = [0, 1].map((i) => figuresUnder(site.base, years.weatherOf(i), prepared));
  // Of two values the error of the mean is half their distance.
  for (const [figure, mean, error] of [
    ['generatorHours', 'generatorHoursMean', 'generatorHoursError'],
    ['fuelLitres', 'fuelLitresMean', 'fuelLitresError'],
    ['darkKWh', 'darkKWhMean', 'darkKWhError'],
  ] as const) {
    expect(results![mean], mean).toBeCloseTo((one![figure] + two![figure]) / 2, 9);
    expect(results![error], error).toBeCloseTo(Math.abs(one![figure] - two![figure]) / 2, 9);
  }
});
