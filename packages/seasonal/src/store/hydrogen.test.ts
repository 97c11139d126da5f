import { expect, test } from 'vitest';
import {
  hydrogenCaution,
  hydrogenChain,
  hydrogenKg,
  hydrogenLowerHeatWhPerKg,
  hydrogenRange,
  hydrogenTechnology,
} from './hydrogen.js';

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

test('an electrolyser may take just the lower heat, and no compression; keeping is one of two', () => {
  expect(hydrogenChain(33.33, 0, 1).roundTrip).toBeCloseTo(1, 9);
  expect(() => hydrogenChain(Number.POSITIVE_INFINITY, 0, 0.5)).toThrow(
    'electrolysis must take 33.33 kWh/kg or more and compression 0 or more, got Infinity and 0',
  );
  expect(() => hydrogenRange('liquid' as never)).toThrow("keeping must be 'unpressed' or '200 bar', got liquid");
  expect(hydrogenRange('200 bar').typical).toMatchObject({ electrolysisKWhPerKg: 55, compressionKWhPerKg: 2.5 });
  expect(hydrogenRange('unpressed').high.compressionKWhPerKg).toBe(0);
});

test('a hydrogen store is tight, and its converters are those of the chain with the minimum loads of the plant', () => {
  const chain = hydrogenChain(55, 2.5, 0.475);
  expect(hydrogenTechnology(chain, { minimumLoad: 0.1, standbyW: 5 }, { minimumLoad: 0, standbyW: 2 })).toEqual({
    kind: 'hydrogen',
    converterIn: { efficiency: expect.closeTo(33.33 / 57.5, 12), minimumLoad: 0.1, standbyW: 5 },
    standingLossPerH: 0,
    converterOut: { efficiency: 0.475, minimumLoad: 0, standbyW: 2 },
  });
});
