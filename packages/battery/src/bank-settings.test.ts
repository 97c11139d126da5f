import { expect, test } from 'vitest';
import { type BankSettings, resolveBank } from './bank-settings.js';

const flooded: BankSettings = { chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 20 };

test('set voltages may be given for one cell or for the bank', () => {
  expect(resolveBank({ ...flooded, absorptionV: 2.45 }).absorptionCellV).toBe(2.45);
  expect(resolveBank({ ...flooded, absorptionV: 29.4 }).absorptionCellV).toBeCloseTo(2.45, 12);
});

test('a lithium bank may be called by 12, 24 or 48 V', () => {
  const lithium = { chemistry: 'lithium-iron-phosphate', capacityAh: 280, atRateH: 5 } as const;
  for (const [voltageV, cells] of [
    [12, 4],
    [12.8, 4],
    [24, 8],
    [25.6, 8],
    [48, 15],
    [51.2, 16],
  ] as const) {
    expect(resolveBank({ ...lithium, voltageV }).cells).toBe(cells);
  }
});

test('an aged bank has less capacity, by years or by a measured share', () => {
  expect(resolveBank({ ...flooded, agedCapacity: 0.7 }).capacityAh).toBeCloseTo(700, 9);
  expect(resolveBank({ ...flooded, ageYears: 6, calendarLifeYears: 12 }).capacityAh).toBeCloseTo(900, 9);
});

test.each<[Partial<BankSettings>, RegExp]>([
  [{ voltageV: 25 }, /voltageV must be a multiple of 2 V.*25/],
  [{ voltageV: Number.NaN }, /voltageV/],
  [{ capacityAh: 0 }, /capacityAh must be .* got 0/],
  [{ atRateH: -3 }, /atRateH/],
  [{ floor: 1.5 }, /floor must be -0.5 to 0.99, got 1.5/],
  [{ absorptionV: 3.6 }, /absorptionV must be 2.1 to 2.8 V per cell/],
  [{ floatV: 2.5, absorptionV: 2.4 }, /floatV must not be above/],
  [{ equaliseV: 2.4, absorptionV: 2.45 }, /equaliseV must not be below absorptionV/],
  [{ tailA: 201 }, /tailA must be 0 to 200, got 201/],
  [{ agedCapacity: 0 }, /agedCapacity/],
  [{ otherLabel: { capacityAh: 900, atRateH: 100 } }, /at 100 h must be 1.01 to 1.58 times that at 20 h, got 900 Ah/],
  [{ otherLabel: { capacityAh: 1200, atRateH: 20 } }, /at 20 h must be/],
  [{ chemistry: 'nickel-iron' as never }, /chemistry must be one of flooded-lead-acid/],
])('%o is refused', (change, message) => {
  expect(() => resolveBank({ ...flooded, ...change } as BankSettings)).toThrow(message);
});
