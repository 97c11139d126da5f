import { expect, test } from 'vitest';
import { type BankSettings, resolveBank } from './bank-settings.js';
import { createBank } from './create-bank.js';

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
    [48, 16],
    [48.1, 15],
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

const agm: BankSettings = { ...flooded, chemistry: 'agm' };

test('the limits of set voltages themselves are allowed, and float may be as high as absorption', () => {
  expect(resolveBank({ ...flooded, floatV: 2.1, absorptionV: 2.8 })).toMatchObject({
    floatCellV: 2.1,
    absorptionCellV: 2.8,
  });
  expect(resolveBank({ ...flooded, floatV: 2.4, absorptionV: 2.4 }).floatCellV).toBe(2.4);
  expect(() => resolveBank({ ...flooded, floatV: 2.09 })).toThrow(/floatV must be 2.1 to 2.8/);
  // From 4 V on it is the bank's: 4 V of two cells are 2 V each.
  expect(resolveBank({ ...flooded, voltageV: 4, cutoffV: 4 }).cutoffCellV).toBe(2);
});

test('vented cells are equalised above absorption, sealed ones not', () => {
  expect(resolveBank(flooded).equaliseCellV).toBe(2.58);
  expect(resolveBank({ ...flooded, absorptionV: 2.7 }).equaliseCellV).toBe(2.7);
  expect(resolveBank({ ...agm, absorptionV: 2.3 }).equaliseCellV).toBe(2.3);
  expect(resolveBank({ ...agm, absorptionV: 2.4 }).equaliseCellV).toBe(2.4);
});

test('what is said goes before what is usual', () => {
  expect(resolveBank(flooded).absorptionHours).toBe(3);
  expect(resolveBank({ ...flooded, absorptionHours: 5 }).absorptionHours).toBe(5);
  const lithium = { chemistry: 'lithium-iron-phosphate', voltageV: 12.8, capacityAh: 100, atRateH: 5 } as const;
  expect(resolveBank({ ...lithium, absorptionV: 3.45 }).absorptionCellV).toBe(3.45);
  expect(() => resolveBank({ ...lithium, absorptionV: 3.8 })).toThrow(/3.2 to 3.7 V per cell/);
  // A key of lead-acid says nothing to lithium.
  expect(resolveBank({ ...lithium, equaliseV: 2 } as BankSettings).equaliseCellV).toBe(3.55);
});

test.each(['flooded-lead-acid', 'agm', 'gel', 'lithium-iron-phosphate'] as const)(
  'a bank of %s needs no more than its label',
  (chemistry) => {
    const bank = createBank({
      chemistry,
      voltageV: chemistry === 'lithium-iron-phosphate' ? 25.6 : 24,
      capacityAh: 500,
      atRateH: 10,
    });
    const { cyclesByDepth, compensationVPerCellK, floor } = bank.settings;
    expect(cyclesByDepth.length).toBeGreaterThan(2);
    expect(floor).toBeGreaterThan(0);
    const isLithium = chemistry === 'lithium-iron-phosphate';
    // Set voltages of lead-acid fall by 3 to 5 mV per cell and kelvin; lithium is charged by one voltage.
    if (isLithium) expect(compensationVPerCellK).toBe(0);
    else
      expect(bank.setVoltage(0, 15) - bank.setVoltage(0, 25)).toBeCloseTo(
        12 * 10 * (chemistry === 'flooded-lead-acid' ? 0.005 : 0.004),
        9,
      );
    // Lead-acid sulphates when it is seldom full, and IEEE 1013 sizes it; lithium bends at both ends of its charge.
    expect(bank.traits).toMatchObject({ sulphates: !isLithium, leadAcidSizing: !isLithium, bendsAtEnds: isLithium });
  },
);

// Doubling per 10 K from 4 % in 730 h at 25 degC: at 60 degC 2^3.5 times as much.
test('self-discharge is known up to 60 degC', () => {
  const bank = createBank(flooded);
  expect(bank.selfDischargePerHour(60)).toBeCloseTo((0.04 / 730) * 2 ** 3.5, 9);
  expect(bank.selfDischargePerHour(59)).toBeCloseTo((0.04 / 730) * 2 ** 3.4, 9);
});
