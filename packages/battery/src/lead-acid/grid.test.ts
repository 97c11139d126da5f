import { expect, test } from 'vitest';
import {
  coldestC,
  hottestC,
  interpolate,
  interpolatePower,
  interpolateState,
  nodeTempC,
  powerNodes,
  stateNodes,
  temperatureNodes,
} from './grid.js';

const linear = (t: number, s: number, p: number) => 3 + 0.2 * nodeTempC(t) - 0.7 * s + 0.11 * p;

test('interpolation gives back a function that is linear along each axis', () => {
  const byPower = new Float64Array(temperatureNodes * stateNodes * powerNodes);
  const byState = new Float64Array(temperatureNodes * stateNodes);
  for (let t = 0; t < temperatureNodes; t++) {
    for (let s = 0; s < stateNodes; s++) {
      byState[t * stateNodes + s] = linear(t, s, 0);
      for (let p = 0; p < powerNodes; p++) byPower[(t * stateNodes + s) * powerNodes + p] = linear(t, s, p);
    }
  }
  for (const tempC of [-50, -12.3, 0, 41, 60]) {
    for (const s of [0, 0.4, 17.9, 40]) {
      const expected = 3 + 0.2 * tempC - 0.7 * s;
      expect(interpolateState(byState, s, tempC)).toBeCloseTo(expected, 7);
      for (const p of [0, 3.3, 24]) expect(interpolatePower(byPower, p, s, tempC)).toBeCloseTo(expected + 0.11 * p, 7);
    }
  }
});

test('positions past the edges take the value of the edge', () => {
  const table = Float64Array.of(5, 6, 8);
  expect(interpolate(table, -4)).toBe(5);
  expect(interpolate(table, 1.5)).toBe(7);
  expect(interpolate(table, 99)).toBe(8);
  const byState = Float64Array.from({ length: temperatureNodes * stateNodes }, (_, k) => k);
  expect(interpolateState(byState, 3, -273)).toBe(interpolateState(byState, 3, coldestC));
  expect(interpolateState(byState, 3, 500)).toBe(interpolateState(byState, 3, hottestC));
  expect(interpolateState(byState, -1, 25)).toBe(interpolateState(byState, 0, 25));
});

test('a table of powers, too, takes the value of its edge beyond it', () => {
  const byPower = Float64Array.from({ length: temperatureNodes * stateNodes * powerNodes }, (_, k) => k);
  const at = (p: number, s: number, tempC: number) => interpolatePower(byPower, p, s, tempC);
  expect(at(-3, 5, 10)).toBe(at(0, 5, 10));
  expect(at(powerNodes + 7, 5, 10)).toBeCloseTo(at(powerNodes - 1, 5, 10), 4);
  // The last node of the first row, by its number, and not the first of the next.
  expect(at(powerNodes - 1, 0, coldestC)).toBeCloseTo(powerNodes - 1, 4);
  expect(at(5, -3, 10)).toBe(at(5, 0, 10));
  expect(at(5, stateNodes + 3, 10)).toBeCloseTo(at(5, stateNodes - 1, 10), 4);
  expect(at(5, 5, -273)).toBe(at(5, 5, coldestC));
  expect(at(5, 5, 500)).toBe(at(5, 5, hottestC));
});
