import { expect, test } from 'vitest';
import { type CellCooling, cellTemperatureYear, noctCellC, windCellC } from './cell-temperature.js';

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

test('a year of cells follows the wind, or the nominal temperature alone', () => {
  const [airC, planeWm2, windMs] = [Float64Array.of(-10, 30), Float64Array.of(500, 800), Float64Array.of(2, 0)];
  const wind = cellTemperatureYear({ kind: 'wind' }, airC, planeWm2, windMs);
  // Faiman (2008): 25.0 and 6.84 W/m2K.
  expect(Array.from(wind)).toEqual([-10 + 500 / (25 + 2 * 6.84), 30 + 800 / 25]);
  const told = cellTemperatureYear({ kind: 'wind', stillWm2K: 20, perWindWm2K: 5 }, airC, planeWm2, windMs);
  expect(Array.from(told)).toEqual([-10 + 500 / 30, 70]);
  expect(Array.from(cellTemperatureYear({ kind: 'noct', noctC: 44 }, airC, planeWm2, windMs))).toEqual([5, 54]);
});

test('cooling that no module has is refused, its limits are not', () => {
  const none = new Float64Array(2);
  const year = (cooling: CellCooling) => () => cellTemperatureYear(cooling, none, none, none);
  for (const noctC of [29, 71]) expect(year({ kind: 'noct', noctC })).toThrow(/noctC/);
  for (const noctC of [30, 70]) expect(year({ kind: 'noct', noctC })).not.toThrow();
  for (const stillWm2K of [4, 101]) expect(year({ kind: 'wind', stillWm2K })).toThrow(/stillWm2K/);
  for (const stillWm2K of [5, 100]) expect(year({ kind: 'wind', stillWm2K })).not.toThrow();
  for (const perWindWm2K of [-1, 21]) expect(year({ kind: 'wind', perWindWm2K })).toThrow(/perWindWm2K/);
  for (const perWindWm2K of [0, 20]) expect(year({ kind: 'wind', perWindWm2K })).not.toThrow();
  const one = new Float64Array(1);
  expect(() => cellTemperatureYear({ kind: 'wind' }, none, one, none)).toThrow('got 2, 1, 2');
  expect(() => cellTemperatureYear({ kind: 'wind' }, none, none, one)).toThrow('got 2, 2, 1');
});
