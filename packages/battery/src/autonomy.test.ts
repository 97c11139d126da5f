import { expect, test } from 'vitest';
import { autonomyDays } from './autonomy.js';
import { createBank } from './create-bank.js';

const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 20 });
const load = { averageLoadW: 150, tempC: 25 };

// By hand: 848.2 Ah x 50 % at about 24.1 V is 10.2 kWh; 150 W takes 3.6 kWh a day.
test('carries a load about as long as the usable energy divided by it', () => {
  const days = autonomyDays(bank, load);
  expect(days).toBeLessThan(bank.usableWh / (150 * 24));
  expect(days).toBeGreaterThan((0.93 * bank.usableWh) / (150 * 24));
});

// Slow rates stretch the capacity more than cold shrinks it, so cold matters to a deep floor or a heavy load first.
test('cold shortens it where the floor is deep', () => {
  const deep = { averageLoadW: 900, floor: 0.1 };
  expect(autonomyDays(bank, { ...deep, tempC: -25 })).toBeLessThan(0.85 * autonomyDays(bank, { ...deep, tempC: 25 }));
});

test('a heavier load, a higher floor and a lower start all shorten it', () => {
  const days = autonomyDays(bank, load);
  expect(autonomyDays(bank, { ...load, averageLoadW: 300 })).toBeLessThan(0.52 * days);
  expect(autonomyDays(bank, { ...load, floor: 0.6 })).toBeLessThan(days);
  expect(autonomyDays(bank, { ...load, fromState: 0.9 })).toBeLessThan(days);
});

test('has no days to give at the floor or under a load it cannot carry', () => {
  expect(autonomyDays(bank, { ...load, fromState: 0.5 })).toBe(0);
  expect(autonomyDays(bank, { ...load, averageLoadW: 1e6 })).toBe(0);
});

test('without load the bank runs itself down in months', () => {
  const days = autonomyDays(bank, { averageLoadW: 0, tempC: 25 });
  // 4 % a month of what is left: from full to the floor of half in ln 2 / 0.04 months of 730 h.
  expect(days).toBeCloseTo(((Math.LN2 / 0.04) * 730) / 24, 1);
  const tight = createBank({ chemistry: 'agm', voltageV: 12, capacityAh: 100, atRateH: 20, selfDischargePerMonth: 0 });
  expect(autonomyDays(tight, { averageLoadW: 0, tempC: 25 })).toBe(Number.POSITIVE_INFINITY);
});

test('a question without sense is refused', () => {
  expect(() => autonomyDays(bank, { ...load, averageLoadW: -5 })).toThrow(/averageLoadW .* -5/);
  expect(() => autonomyDays(bank, { ...load, tempC: Number.NaN })).toThrow(RangeError);
  expect(() => autonomyDays(bank, { ...load, fromState: 2 })).toThrow(RangeError);
});

test('a bank below its floor has no days, and nor has one at the floor that nothing draws on', () => {
  expect(autonomyDays(bank, { ...load, fromState: 0.4, floor: 0.5 })).toBe(0);
  const tight = createBank({ chemistry: 'agm', voltageV: 12, capacityAh: 100, atRateH: 20, selfDischargePerMonth: 0 });
  expect(autonomyDays(tight, { averageLoadW: 0, tempC: 25, fromState: 0.5 })).toBe(0);
});

test('what cold hides from a heavy load is not counted, however deep the floor', () => {
  const cold = { averageLoadW: 900, tempC: -25 };
  // 900 W at some 23 V are 39 A.
  const empty = bank.reachableEmpty(-25, 900 / 23);
  expect(empty).toBeGreaterThan(0.15);
  const toEmpty = autonomyDays(bank, { ...cold, floor: empty });
  expect(autonomyDays(bank, { ...cold, floor: 0 })).toBeGreaterThan(0.97 * toEmpty);
  expect(autonomyDays(bank, { ...cold, floor: 0 })).toBeLessThan(1.03 * toEmpty);
});
