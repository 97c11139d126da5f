import type { DesignCost } from '@wintergap/seasonal';
import { expect, test } from 'vitest';
import { costAgainst } from './design-costs.js';

const years = (totals: readonly (number | null)[], unpriced: readonly string[] = []) =>
  totals.map(
    (total) =>
      ({
        known: total === null ? null : { total },
        unpriced: unpriced.map((name) => ({ name, thing: name })),
      }) as unknown as DesignCost,
  );
const base = years([5000, 6000, 5500]);

test('what a design costs more is told year by year, from a hundredth of the place on', () => {
  // The base costs 5500 in the mean: 55 count, 54 do not, however sure they are.
  expect(costAgainst(years([5055, 6055, 5555]), base)!.difference).toMatchObject({ mean: 55, verdict: 'more' });
  expect(costAgainst(years([4946, 5946, 5446]), base)!.difference).toMatchObject({ mean: -54, verdict: 'none' });
});

test('things without a price are named on the side that has them', () => {
  const against = costAgainst(
    years([5000, 6000, 5500], ['pole', 'inverter']),
    years([5000, 6000, 5500], ['inverter', 'crane']),
  );
  expect(against).toMatchObject({ here: ['pole'], there: ['crane'] });
});

test('where a year of either has no known cost there is no difference to tell', () => {
  expect(costAgainst(years([5055, null, 5555]), base)).toBeNull();
  expect(costAgainst(years([5055, 6055, 5555]), years([5000, 6000, null]))).toBeNull();
});
