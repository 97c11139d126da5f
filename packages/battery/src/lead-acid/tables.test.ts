import { expect, test } from 'vitest';
import { createBank } from '../create-bank.js';
import { chargeCellV, overcharge } from './charge.js';
import { discharge, dischargeCellV } from './discharge.js';
import { ventedFullCell } from './full-cell.js';
import { powerNodes, stateNodes } from './grid.js';
import { chargePosition, dischargePosition, powerPosition } from './tables.js';

const flooded = { resistanceFactor: 1, efficiencyFactor: 1, full: ventedFullCell };
const cell = createBank({ chemistry: 'flooded-lead-acid', voltageV: 2, capacityAh: 100, atRateH: 10 });

// Straight lines over 2.5 % of charge and 10 K miss most just after the onset of gassing and just before the end of
// a discharge, where the equations bend.
test('table voltages are within 15 mV of the equations at 98 of 100 points, and within 80 mV at all', () => {
  const errors: number[] = [];
  for (let tempC = -25; tempC <= 45; tempC += 5.5) {
    for (const amps of [0.3, 1, 2.5, 5, 10, 20]) {
      const up = overcharge(amps / 100, tempC, flooded);
      const down = discharge(amps / 100, tempC, 1);
      for (let s = 0.2; s <= 0.99; s += 0.013) {
        errors.push(Math.abs(cell.terminalVoltage(amps, s, tempC) - chargeCellV(amps / 100, s, up)));
        if (s > cell.reachableEmpty(tempC, amps) + 0.25) {
          errors.push(Math.abs(cell.terminalVoltage(-amps, s, tempC) - dischargeCellV(s, down)));
        }
      }
    }
  }
  errors.sort((a, b) => a - b);
  expect(errors.length).toBeGreaterThan(5000);
  expect(errors[Math.floor(0.98 * errors.length)]!).toBeLessThan(0.015);
  expect(errors[errors.length - 1]!).toBeLessThan(0.08);
});

test('table acceptance agrees with the largest current found on the equations by bisection', () => {
  for (const tempC of [-15, 0, 12, 25, 35]) {
    const setV = cell.setVoltage(0, tempC);
    for (const s of [0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98]) {
      let low = 1e-6;
      let high = 1;
      for (let k = 0; k < 40; k++) {
        const rate = (low + high) / 2;
        if (chargeCellV(rate, s, overcharge(rate, tempC, flooded)) <= setV) low = rate;
        else high = rate;
      }
      // Near full in a warm cell acceptance drops by half within a hundredth of charge.
      expect(Math.abs(cell.acceptanceAmps(s, tempC, 0) / (100 * low) - 1)).toBeLessThan(s > 0.97 ? 0.2 : 0.04);
    }
  }
});

// Charge tables are even in the root of the depth, discharge tables in the depth, power axes in the root of the power.
test('the axes of the tables run from one end to the other, and a charge above full stands at full', () => {
  const last = stateNodes - 1;
  expect([1, 0.25, 0, -1e-9].map(chargePosition)).toEqual([0, last / 2, last, last]);
  expect([1, 0.25, 0].map(dischargePosition)).toEqual([0, 0.75 * last, last]);
  // Up to 2.5 W for each ampere-hour and cell.
  expect(powerPosition(0)).toBe(0);
  expect(powerPosition(2.5)).toBeCloseTo(powerNodes - 1, 9);
  expect(powerPosition(2.5 / 4)).toBeCloseTo((powerNodes - 1) / 2, 9);
});
