import fc from 'fast-check';
import { expect, test } from 'vitest';
import { startFails } from './start-failure.js';

const sequence = (chance: number, seed: number, attempts = 64) =>
  Array.from({ length: attempts }, (_, attempt) => startFails({ chance, seed, retryAfterH: 1 }, attempt));

test('the same seed gives the same failures, another seed others', () => {
  expect(sequence(0.5, 7)).toEqual(sequence(0.5, 7));
  fc.assert(
    fc.property(fc.integer(), fc.integer(), (a, b) => {
      fc.pre(a !== b);
      expect(sequence(0.5, a)).not.toEqual(sequence(0.5, b));
    }),
  );
});

test('a chance of zero never fails and one of one always does', () => {
  expect(sequence(0, 3).includes(true)).toBe(false);
  expect(sequence(1, 3).includes(false)).toBe(false);
});

test('a greater chance fails whenever a smaller one does', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 }), (a, b) => {
      const rare = sequence(Math.min(a, b) / 1000, 11);
      const often = sequence(Math.max(a, b) / 1000, 11);
      expect(rare.every((fails, attempt) => !fails || often[attempt]!)).toBe(true);
    }),
  );
});

// 20 000 attempts at 5 %: standard deviation 0.15 %; four of them. Pairs of failures at 0.25 %: 0.035 %, five of them.
test('failures come as often as their chance says, alone and in pairs, whatever the seed', () => {
  for (const seed of [0, 1, 2, 1_000_003, -5]) {
    const fails = sequence(0.05, seed, 20_000);
    const pairs = fails.filter((fail, attempt) => fail && fails[attempt + 1]).length;
    expect(Math.abs(fails.filter(Boolean).length / 20_000 - 0.05)).toBeLessThan(0.0062);
    expect(Math.abs(pairs / 20_000 - 0.0025)).toBeLessThan(0.0018);
  }
});
