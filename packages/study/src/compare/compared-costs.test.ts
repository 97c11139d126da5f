import { join } from 'node:path';
import { readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { commonAnswer } from '../common/common-answer.js';
import { fileYear } from '../common/file-year.js';
import { comparedCosts } from './design-costs.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));

test("a bank lasts as long as the file's year wears it", () => {
  const designs = [{ name: 'base', result: simulateSite(site.base) }];
  const [base] = comparedCosts(designs, commonAnswer(fileYear(designs)), readCosts(site)!);
  expect(base!.name).toBe('base');
  expect(base!.cost.bankYears).toBeGreaterThan(2);
  expect(base!.cost.bankYears).toBeLessThan(40);
});
