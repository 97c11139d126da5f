import { expect, test } from 'vitest';
import { createBank } from '../create-bank.js';
import { restByState } from './cell.js';

const label = { chemistry: 'lithium-iron-phosphate', voltageV: 25.6, capacityAh: 280, atRateH: 5 } as const;
const bank = createBank(label);

test('takes no charge at or below 0 degC and all of its limit from 5 degC', () => {
  for (const tempC of [-40, -5, -0.1, 0]) expect(bank.acceptanceAmps(0.5, tempC, 0)).toBe(0);
  expect(bank.acceptanceAmps(0.5, 2.5, 0)).toBeCloseTo(bank.chargeLimitA / 2, 9);
  expect(bank.acceptanceAmps(0.5, 5, 0)).toBeCloseTo(bank.chargeLimitA, 9);
});

test('takes nothing when full, and on float stops before full', () => {
  expect(bank.acceptanceAmps(1, 25, 0)).toBe(0);
  expect(bank.acceptanceAmps(0.99, 25, 1)).toBe(0);
  expect(bank.acceptanceAmps(0.9, 25, 1)).toBeGreaterThan(0);
});

test('stored energy is the exact integral of the rest voltage', () => {
  let sum = 0;
  const n = 20000;
  for (let k = 0; k < n; k++) sum += (bank.restVoltage((k + 0.5) / n) * bank.refAh) / n;
  expect(bank.storedWh(1)).toBeCloseTo(sum, 3);
  for (const [s, cellV] of restByState) expect(bank.restVoltage(s)).toBeCloseTo(8 * cellV, 9);
});

// Reference range for LiFePO4: 92-97 % energy efficiency; common practice.
test('gives back 92 to 97 % of the energy at a five-hour rate', () => {
  const amps = bank.refAh / 5;
  let inWh = 0;
  let outWh = 0;
  for (let s = 0.2; s < 0.9; s += 0.001) {
    inWh += bank.terminalVoltage(amps, s, 25) / bank.chargeEfficiency(s, amps);
    outWh += bank.terminalVoltage(-amps, s, 25);
  }
  expect(outWh / inWh).toBeGreaterThan(0.92);
  expect(outWh / inWh).toBeLessThan(0.97);
});

// Capacity at -20 degC 60-80 %: typical, from memory.
test('leaves a fifth to two fifths out of reach at -20 degC', () => {
  expect(bank.reachableEmpty(-20, 20)).toBeGreaterThanOrEqual(0.2);
  expect(bank.reachableEmpty(-20, 20)).toBeLessThanOrEqual(0.4);
  expect(bank.reachableEmpty(25, 20)).toBe(0);
});

test('has nothing to freeze or to water', () => {
  expect(bank.freezingC(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(bank.waterLossGrams(100)).toBe(0);
});

// By hand from the printed tables of `cell.ts`: 8 cells, 0.25 ohm Ah / 280 Ah each at 25 degC, 3.30 V at half charge.
test('a discharge is limited by the cutoff or by the maker, and by neither below where electronics cut off', () => {
  const strong = createBank({ ...label, dischargeLimitA: 1000 });
  const ohm = 0.25 / 280;
  expect(strong.dischargeLimitAmps(0.5, 25)).toBeCloseTo((3.3 - 2.8) / ohm, 6);
  expect(strong.dischargeLimitAmps(0.5, 0)).toBeCloseTo((3.3 - 2.8) / (2 * ohm), 6);
  // The usual limit is an hour's rate; half way from -25 to -20 degC half of it.
  expect(bank.dischargeLimitAmps(0.5, 25)).toBe(280);
  expect(bank.dischargeLimitAmps(0.9, -22.5)).toBeCloseTo(Math.min(140, (3.34 - 2.8) / (5.75 * ohm)), 6);
  expect(bank.dischargeLimitAmps(0.9, -25)).toBe(0);
  const early = createBank({ ...label, cutoffV: 3.2 });
  expect(early.dischargeLimitAmps(0.05, 25)).toBe(0);
  expect(early.dischargeLimitAmps(0.3, 25)).toBeCloseTo(0.08 / ohm, 6);
});

test('near full the resistance to charging rises: to twice with 2 % missing', () => {
  // 56 A over 0.25 ohm Ah / 280 Ah are 50 mV, twice that at 98 %; 3.36 to 3.42 V at rest from 95 to 100 %.
  expect(bank.terminalVoltage(56, 0.98, 25)).toBeCloseTo(8 * (3.396 + 0.1), 6);
  expect(bank.terminalVoltage(-56, 0.5, 25)).toBeCloseTo(8 * (3.3 - 0.05), 6);
  const eager = createBank({ ...label, chargeLimitA: 1e5 });
  expect(eager.acceptanceAmps(0.9, 25, 0)).toBeCloseTo((3.55 - 3.34) / ((0.25 / 280) * 1.2), 6);
  // In the last ten-thousandth it falls straight to nothing.
  expect(eager.acceptanceAmps(1 - 5e-5, 25, 0) / eager.acceptanceAmps(1 - 1e-4, 25, 0)).toBeCloseTo(0.5, 2);
});

test('settings, stages and the usable part', () => {
  expect([0, 1, 2].map((stage) => bank.setVoltage(stage as 0 | 1 | 2, -10))).toEqual([8 * 3.55, 8 * 3.37, 8 * 3.55]);
  // The rest voltage's trapezes from 10 to 100 % add up to 2.972 V.
  expect(bank.usableWh).toBeCloseTo(8 * 280 * 2.972, 6);
  expect([bank.tailA, createBank({ ...label, tailA: 7 }).tailA]).toEqual([14, 7]);
  expect([bank.ampereHoursIn(1), bank.ampereHoursIn(100)]).toEqual([280, 280]);
  expect(bank.gasEnergyWh(10)).toBe(0);
  expect(bank.storedWh(-0.2)).toBe(0);
  // 2 % in 730 h at 25 degC, doubling per 10 K.
  expect(bank.selfDischargePerHour(25)).toBeCloseTo(0.02 / 730, 12);
  expect(bank.selfDischargePerHour(35)).toBeCloseTo(0.04 / 730, 12);
});

test('the floor is the owner or the cold, whichever is higher', () => {
  const floors = (floor: number) => [25, -20].map((tempC) => createBank({ ...label, floor }).floorState(tempC, 20));
  // 70 % of the capacity is left at -20 degC.
  expect(floors(0.1).map((s) => Number(s.toFixed(9)))).toEqual([0.1, 0.3]);
  expect(floors(0.4)).toEqual([0.4, 0.4]);
});
