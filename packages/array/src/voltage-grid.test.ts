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
  let least = 0;
  for (let h = 0; h < 200; h++) {
    for (let j = 0; j <= 240; j++) {
      const error = Math.max(0, fine.currentA[h * 241 + j]!) - gridCurrentA(grid, h, 20 + 0.05 * j);
      worst = Math.max(worst, error);
      least = Math.min(least, error);
    }
  }
  expect(least).toBeGreaterThan(-1e-9);
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
  for (const [low, high] of [
    [32, 20],
    [20, 20],
    [-1, 20],
    [20, 2000],
    [Number.NaN, 20],
  ] as const) {
    expect(() => voltageGridYear(input, low, high)).toThrow(/lowestV and highestV must rise/);
  }
  for (const count of [1, 2.5, 1001]) expect(() => voltageGridYear(input, 20, 32, count)).toThrow(/count must be/);
});

const hours = (lightWm2: readonly number[]): ArrayYearInput => ({
  ...input,
  effectiveWm2: Float64Array.from(lightWm2),
  cellC: new Float64Array(lightWm2.length).fill(25),
});

test('a grid from no voltage up, of two points or a thousand, is one', () => {
  const day = hours([800]);
  // Short circuit of four strings, 0.8 of 9.82 A each, less what the cable's volts take.
  expect(gridCurrentA(voltageGridYear(day, 0, 10, 2), 0, 0)).toBeCloseTo(4 * 0.8 * 9.82, 1);
  expect(voltageGridYear(day, 0, 1999, 1000).stepV).toBeCloseTo(1999 / 999, 12);
});

test('only the hours asked for are held, and each reads as in a grid of all of them', () => {
  const all = voltageGridYear(hours([700, 200, 900, 400]), 20, 30);
  const some = voltageGridYear(hours([700, 200, 900, 400]), 20, 30, 13, Uint8Array.of(0, 1, 0, 1));
  expect([...some.rowOf]).toEqual([-1, 0, -1, 13]);
  expect(some.currentA.length).toBe(26);
  for (const hour of [1, 3]) {
    for (const volts of [20, 22.3, 27.1, 30]) {
      expect(gridCurrentA(some, hour, volts)).toBe(gridCurrentA(all, hour, volts));
    }
  }
});

test('a dark hour has no current at any voltage, in either direction, whatever the hours around it', () => {
  const { currentA } = voltageGridYear(hours([800, 0, 800]), 10, 20, 6);
  expect([...currentA.subarray(6, 12)]).toEqual([0, 0, 0, 0, 0, 0]);
  for (const k of [0, 5]) expect(currentA[k]).toBeGreaterThan(20);
});

// 39.9 V of open circuit at 1000 W/m2: some 39 V at 600.
test('beyond open circuit one entry is negative, and the rest of the row is nothing', () => {
  const { currentA } = voltageGridYear(hours([600]), 30, 60, 7);
  const [at35, at40, ...beyond] = currentA.subarray(1);
  expect(at35).toBeGreaterThan(0);
  expect(at40).toBeLessThan(0);
  expect(beyond).toEqual([0, 0, 0, 0]);
});

test('between two points the current is that of the line between them, up to the very last', () => {
  const grid = voltageGridYear(hours([900]), 20, 32, 4);
  const [a, b, c, d] = grid.currentA;
  expect(gridCurrentA(grid, 0, 21)).toBeCloseTo(a! + (b! - a!) / 4, 12);
  expect(gridCurrentA(grid, 0, 26)).toBeCloseTo((b! + c!) / 2, 12);
  expect(gridCurrentA(grid, 0, 31)).toBeCloseTo(c! + (3 * (d! - c!)) / 4, 12);
  expect(gridCurrentA(grid, 0, 32)).toBe(d);
});
