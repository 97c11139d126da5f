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
    fc.property(fc.array(fc.integer({ min: -500_000, max: 500_000 }), { minLength: 24, maxLength: 24 }), (net) => {
      const ledger = createLedger();
      let stored = 50_000;
      ledger.bankStoredAtStartWh = stored;
      for (let h = 0; h < 8760; h++) {
        const wh = net[h % 24]! / 1000;
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

test('an imbalance is in - out - lost - stored, measured against the in, out and lost of its hour', () => {
  const ledger = createLedger();
  ledger.arrayUsedWh.fill(100, 10, 21);
  ledger.dcServedWh.fill(70, 10, 21);
  ledger.bankLossWh.fill(30, 10, 21);
  ledger.arrayUsedWh[10] = 101;
  ledger.arrayUsedWh[20] = 101;
  ledger.bankLossWh[15] = 30.5;
  const closing = measureClosing(ledger);
  // Of two hours equally far off, 1 in 201, the first is named; the third is off the other way.
  expect(closing.worstHour).toBe(10);
  expect(closing.worstRelative).toBeCloseTo(1 / 201, 12);
  expect(closing.worstHourWh).toBe(1);
  expect(closing.yearWh).toBeCloseTo(1 + 1 - 0.5, 12);
});

test('a small hour that is far off is worse than a large one that is more energy off', () => {
  const ledger = createLedger();
  ledger.arrayUsedWh[10] = 1_000_000;
  ledger.dcServedWh[10] = 999_999;
  ledger.generatorWh[11] = 1;
  ledger.acServedWh[11] = 0.5;
  const closing = measureClosing(ledger);
  expect(closing).toMatchObject({ worstHour: 11, worstHourWh: 1, yearWh: 1.5 });
  expect(closing.worstRelative).toBeCloseTo(0.5 / 1.5, 8);
});

test('a bank whose store changes in an hour without any flow is refused', () => {
  const ledger = createLedger();
  ledger.bankStoredAtStartWh = 1000;
  ledger.bankStoredWh.fill(1000, 0, 99);
  ledger.bankStoredWh.fill(1000.001, 99);
  expect(() => assertCloses(ledger)).toThrow(/hour 99/);
});
