import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { rerunOf } from './rerun.js';

const { base } = loadSite(join(import.meta.dirname, '../../../examples/kettle-pond.yaml'));

test('a year run again is the year, and each is told of', () => {
  let told = 0;
  const rerun = rerunOf(() => told++);
  const { summary } = rerun(base);
  expect(rerun({ ...base, loads: [] }).summary.generator.hours).toBeLessThan(summary.generator.hours);
  expect(told).toBe(2);
  expect(summary).toEqual(simulateSite(base).summary);
});
