import { expect, test } from 'vitest';
import { dcYear } from './dc-year.js';
import { currentAt } from './operating-point.js';
import { solveModule } from './solve-module.js';
import { gridCurrentA, voltageGridYear } from './voltage-grid.js';
import type { ArrayYearInput } from './wiring.js';

// Invented sheet, 20 V class: the knee of its curve lies within the voltages of a 24 V bank.
const parameters = solveModule({
  ...{ vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, vocPerK: -0.0031, iscPerK: 0.0005 },
});
const effectiveWm2 = Float64Array.from({ length: 200 }, (_, h) => 5.5 * h);
const cellC = Float64Array.from({ length: 200 }, (_, h) => -30 + ((h * 7) % 100));
const input: ArrayYearInput = { parameters, inSeries: 1, strings: 4, cableOhm: 0.05, effectiveWm2, cellC };

test('without a cable the grid reads as the current of one module times the strings, never below zero', () => {
  const grid = voltageGridYear({ ...input, cableOhm: 0 }, 20, 44, 13);
  for (let h = 0; h < 200; h++) {
    for (let k = 0; k < 13; k++) {
      const own = 4 * currentAt(parameters, effectiveWm2[h]!, cellC[h]!, 20 + 2 * k);
      expect(gridCurrentA(grid, h, 20 + 2 * k)).toBeCloseTo(Math.max(0, own), 9);
    }
  }
});

test('with a cable the array stands higher by the drop: the current is that of bank voltage plus current x ohm', () => {
  const grid = voltageGridYear(input, 20, 32, 13);
  let compared = 0;
  for (let h = 0; h < 200; h++) {
    for (let k = 0; k < 13; k++) {
      const current = grid.currentA[h * 13 + k]!;
      if (current <= 0) continue;
      compared++;
      expect(4 * currentAt(parameters, effectiveWm2[h]!, cellC[h]!, 20 + k + 0.05 * current)).toBeCloseTo(current, 7);
    }
  }
  expect(compared).toBeGreaterThan(2000);
});

// The curve is concave, so a straight line lies below it. The bound is the measured one of the doc comment.
test('13 points over 20 to 32 V read too low by less than 0.25 % of the short-circuit current, never too high', () => {
  const grid = voltageGridYear(input, 20, 32, 13);
  const fine = voltageGridYear(input, 20, 32, 241);
  let worst = 0;
  for (let h = 0; h < 200; h++) {
    for (let j = 0; j <= 240; j++) {
      const error = Math.max(0, fine.currentA[h * 241 + j]!) - gridCurrentA(grid, h, 20 + 0.05 * j);
      expect(error).toBeGreaterThan(-1e-9);
      worst = Math.max(worst, error);
    }
  }
  expect(worst).toBeGreaterThan(0);
  expect(worst / (4 * 9.82)).toBeLessThan(0.0025);
});

test('beyond its ends the grid answers with the nearest end', () => {
  const grid = voltageGridYear(input, 20, 32, 13);
  expect(gridCurrentA(grid, 150, 3)).toBe(grid.currentA[150 * 13]);
  expect(gridCurrentA(grid, 150, 99)).toBe(grid.currentA[150 * 13 + 12]);
});

test('no held voltage gives more power than the maximum-power controller finds at the same terminals', () => {
  const grid = voltageGridYear(input, 10, 40, 301);
  const dc = dcYear(input);
  for (let h = 0; h < 200; h++) {
    let best = 0;
    for (let k = 0; k < 301; k++) best = Math.max(best, (10 + 0.1 * k) * grid.currentA[h * 301 + k]!);
    expect(best).toBeLessThanOrEqual(dc.powerW[h]! * (1 + 1e-9));
    if (dc.voltageV[h]! > 10 && dc.voltageV[h]! < 40) expect(best).toBeGreaterThan(dc.powerW[h]! * 0.9998);
  }
});

test('voltages and counts that make no grid are refused', () => {
  expect(() => voltageGridYear(input, 32, 20)).toThrow(/lowestV and highestV must rise/);
  expect(() => voltageGridYear(input, 20, 32, 1)).toThrow(/count must be/);
});
