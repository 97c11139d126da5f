import { expect, test } from 'vitest';
import { meanCost } from './cost-difference.js';
import type { DesignCost } from './design-cost.js';

const cost = (part: number, more: Partial<DesignCost> = {}): DesignCost => {
  const lifeCycle = { total: 10 * part, firstCost: 7, yearly: 2 * part, replacements: 3 * part, salvage: part };
  return {
    ...{ firstCost: 7, runningPerYear: 5 * part, lifeCycle, perYear: part, bankYears: 8, missing: [] },
    ...{ known: { ...lifeCycle, total: 11 * part }, unpriced: [], ...more },
  };
};

test('the mean over years of what hangs on use; what was bought was bought once', () => {
  expect(meanCost([cost(1), cost(2), cost(6)])).toEqual({
    ...{ firstCost: 7, runningPerYear: 15, perYear: 3, bankYears: 8, missing: [], unpriced: [] },
    lifeCycle: { total: 30, firstCost: 7, yearly: 6, replacements: 9, salvage: 3 },
    known: { total: 33, firstCost: 7, yearly: 6, replacements: 9, salvage: 3 },
  });
});

test('what is open in one year is open in all', () => {
  const open = { runningPerYear: null, lifeCycle: null, perYear: null, known: null };
  expect(meanCost([cost(1, open), cost(2, open)])).toMatchObject(open);
});
