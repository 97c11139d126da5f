import { expect, test } from 'vitest';
import { cellTemperatureYear, noctCellC, windCellC } from './cell-temperature.js';

// Faiman 2008, the formula worked by hand: 20 + 1000 / (25 + 6.84).
test('full sun and a light wind warm a module by 31 K', () => {
  expect(windCellC(20, 1000, 1)).toBeCloseTo(51.41, 2);
  expect(windCellC(20, 800, 1)).toBeCloseTo(45.13, 2);
});

test('a nominal operating cell temperature comes back at its own conditions', () => {
  expect(noctCellC(20, 800, 45)).toBe(45);
  expect(noctCellC(-25, 0, 45)).toBe(-25);
});

test('the year is the hour, hour by hour, and NOCT does not look at the wind', () => {
  const air = Float64Array.of(-30, 10);
  const plane = Float64Array.of(0, 900);
  const wind = Float64Array.of(5, 2);
  expect([...cellTemperatureYear({ kind: 'wind' }, air, plane, wind)]).toEqual([-30, windCellC(10, 900, 2)]);
  expect([...cellTemperatureYear({ kind: 'noct', noctC: 47 }, air, plane, wind)]).toEqual([
    -30,
    noctCellC(10, 900, 47),
  ]);
});

test('unequal lengths and impossible coefficients are refused', () => {
  const two = new Float64Array(2);
  expect(() => cellTemperatureYear({ kind: 'wind' }, two, two, new Float64Array(3))).toThrow(/one length, got 2, 2, 3/);
  expect(() => cellTemperatureYear({ kind: 'noct', noctC: 300 }, two, two, two)).toThrow(/noctC must be 30 to 70/);
  expect(() => cellTemperatureYear({ kind: 'wind', stillWm2K: 0 }, two, two, two)).toThrow(/stillWm2K/);
});
