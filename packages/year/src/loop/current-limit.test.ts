import { yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { plantOf } from './plant.fixture.js';
import { settle } from './settle.js';

const noonSun = (h: number) => (h % 24 >= 8 && h % 24 < 16 ? 2000 : 0);

test('a current limit takes nothing where the full bank would have refused it', () => {
  const { ledger } = settle(plantOf({ sunW: noonSun, dcW: () => 20, maxCurrentA: 30 }));
  // The limit is about 750 W of 2000; the load and the bank's losses want a twentieth of that.
  expect(yearSum(ledger.clippedWh)).toBeLessThan(0.01 * yearSum(ledger.spareWh));
  const larger = settle(plantOf({ sunW: noonSun, dcW: () => 20 })).ledger;
  expect(yearSum(larger.arrayUsedWh) / yearSum(ledger.arrayUsedWh)).toBeCloseTo(1, 2);
});

test('where bank and load are hungry the limit takes all that is above it', () => {
  const { ledger } = settle(plantOf({ sunW: noonSun, dcW: () => 900, maxCurrentA: 30 }));
  expect(yearSum(ledger.clippedWh)).toBeGreaterThan(1e6);
  expect(yearSum(ledger.spareWh)).toBe(0);
  for (let h = 0; h < 8760; h++) {
    const above = noonSun(h) - ledger.arrayAvailableWh[h]! - ledger.clippedWh[h]! - ledger.spareWh[h]!;
    expect(Math.abs(above)).toBeLessThan(1e-6);
  }
});
