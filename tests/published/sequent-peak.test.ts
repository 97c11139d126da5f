import { runStore, type SeasonalStore, sequentPeak } from '@wintergap/seasonal';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// Inflows as in Loucks and van Beek, Water Resources Systems Planning and Management, chapter on reservoir yield;
// from memory. Sequent peak of Thomas and Burden 1963.
const inflows = [1, 3, 3, 5, 8, 6, 7, 2, 1];
const demand = inflows.map(() => 3.5);

test('the textbook inflows with a demand of 3.5 a period need a store of 7.5', () => {
  // K of the second round, by hand: 6.5 7 7.5 6 1.5 0 0 1.5 4.
  const found = sequentPeak(inflows, demand);
  expect(found).toEqual({ closes: true, storeSize: 7.5, fullAfter: 6, emptyAfter: 2 });
  const textbook: Source = { from: 'Loucks and van Beek, inflows of a textbook', sure: 'from memory' };
  if (found.closes) holds(textbook, 'store for a demand of 3.5 a period', found.storeSize, 7.5, { within: 0 });
});

test('the hourly run with that store meets every period and is empty once', () => {
  const store: SeasonalStore = {
    kind: 'own',
    converterIn: { efficiency: 1, powerW: 100, minimumLoad: 0, standbyW: 0 },
    store: { capacityWh: 7.5, standingLossPerH: 0 },
    converterOut: { efficiency: 1, powerW: 100, minimumLoad: 0, standbyW: 0 },
  };
  const year = runStore(inflows, demand, store, 0);
  expect(year.totals.unmetWh).toBe(0);
  // Content is 7.5 - K.
  expect(Array.from(year.storedWh)).toEqual([1, 0.5, 0, 1.5, 6, 7.5, 7.5, 6, 3.5]);
  // 36 come in, 31.5 are asked: 4.5 run over.
  const balance: Source = { from: 'what comes in less what is asked', sure: 'law' };
  holds(balance, 'what that store spills in the hourly run', year.totals.spilledWh, 4.5, { within: 1e-12 });
});

// Rippl 1883: the largest steady yield is the mean inflow, and no store gives more.
test('a demand at the mean inflow closes, one above it does not', () => {
  const mean = 36 / 9;
  expect(
    sequentPeak(
      inflows,
      inflows.map(() => mean),
    ).closes,
  ).toBe(true);
  const above = sequentPeak(
    inflows,
    inflows.map(() => 4.5),
  );
  expect(above).toEqual({ closes: false, shortBy: 4.5 });
});
