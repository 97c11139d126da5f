import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assertCloses, measureClosing } from './closing.js';
import { createLedger } from './ledger.js';

test('an hour that takes in more than it gives, loses and stores is found and named', () => {
  const ledger = createLedger();
  ledger.arrayUsedWh.fill(100);
  ledger.dcServedWh.fill(70);
  ledger.bankLossWh.fill(30);
  ledger.inverterLossWh[4321] = 1e-6;
  const closing = measureClosing(ledger);
  expect(closing.worstHour).toBe(4321);
  expect(closing.worstHourWh).toBeCloseTo(1e-6, 12);
  expect(() => assertCloses(ledger)).toThrow(/hour 4321/);
});

test('a ledger whose stored energy follows its flows closes', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 24, maxLength: 24 }), (net) => {
      const ledger = createLedger();
      let stored = 50_000;
      ledger.bankStoredAtStartWh = stored;
      for (let h = 0; h < 8760; h++) {
        const wh = net[h % 24]!;
        if (wh > 0) ledger.arrayUsedWh[h] = wh;
        else ledger.acServedWh[h] = -wh;
        stored += wh;
        ledger.bankStoredWh[h] = stored;
      }
      expect(() => assertCloses(ledger)).not.toThrow();
    }),
    { numRuns: 20 },
  );
});

test('a column that is not a number fails the closing check', () => {
  const ledger = createLedger();
  ledger.acServedWh[7] = Number.NaN;
  expect(() => assertCloses(ledger)).toThrow(/hour 7/);
});
