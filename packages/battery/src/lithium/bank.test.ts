import { expect, test } from 'vitest';
import { createBank } from '../create-bank.js';
import { restByState } from './cell.js';

const bank = createBank({ chemistry: 'lithium-iron-phosphate', voltageV: 25.6, capacityAh: 280, atRateH: 5 });

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
