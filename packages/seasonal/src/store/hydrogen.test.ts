import { expect, test } from 'vitest';
import { hydrogenCaution, hydrogenChain, hydrogenKg, hydrogenLowerHeatWhPerKg, hydrogenRange } from './hydrogen.js';

test('lower heat in kWh is the 120.0 MJ/kg of the tables, from memory', () => {
  expect(Math.abs((hydrogenLowerHeatWhPerKg * 3.6e-3) / 120.0 - 1)).toBeLessThan(2e-4);
  expect(hydrogenKg(33_330)).toBe(1);
});

// Round trip of small hydrogen plant commonly given as 25-40 %, from memory.
test('a typical chain lies in the published 25-40 % round trip, with or without compression', () => {
  for (const keeping of ['unpressed', '200 bar'] as const) {
    const { low, typical, high } = hydrogenRange(keeping);
    expect(typical.roundTrip).toBeGreaterThan(0.25);
    expect(high.roundTrip).toBeLessThan(0.4);
    expect(low.roundTrip).toBeLessThan(typical.roundTrip);
    expect(high.roundTrip).toBeGreaterThan(typical.roundTrip);
  }
  // The worst of every part together falls below the published range, the best does not reach its top.
  expect(hydrogenRange('200 bar').low.roundTrip).toBeCloseTo((33.33 / 63) * 0.4, 4);
  expect(hydrogenRange('unpressed').high.roundTrip).toBeCloseTo((33.33 / 50) * 0.55, 4);
});

test('no electrolyser stores more than it takes', () => {
  expect(() => hydrogenChain(30, 0, 0.5)).toThrow(RangeError);
  expect(() => hydrogenChain(50, -1, 0.5)).toThrow(RangeError);
  expect(() => hydrogenChain(50, 0, 1.1)).toThrow(RangeError);
});

test('the caution names the range in which hydrogen burns and asks for a licensed design', () => {
  expect(hydrogenCaution).toMatch(/4 to 75 % by volume/);
  expect(hydrogenCaution).toMatch(/licensed/);
});
