import fc from 'fast-check';
import { mean, sampleKurtosis, variance } from 'simple-statistics';
import { expect, test } from 'vitest';
import { philox, RandomStream } from './random.js';

// Known answers published with Salmon et al. (2011) as part of their test vectors, philox4x32 10 rounds: from memory.
// Twelve words that agree to the last bit leave no room for a slip in rounds, constants or carries.
test('Philox reproduces its published known answers', () => {
  const out = new Uint32Array(4);
  philox(Uint32Array.of(0, 0, 0, 0), [0, 0], out);
  expect([...out]).toEqual([0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8]);
  philox(Uint32Array.of(0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff), [0xffffffff, 0xffffffff], out);
  expect([...out]).toEqual([0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd]);
  philox(Uint32Array.of(0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344), [0xa4093822, 0x299f31d0], out);
  expect([...out]).toEqual([0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1]);
});

const draws = (stream: RandomStream, count: number, draw: 'uniform' | 'normal') =>
  Array.from({ length: count }, () => stream[draw]());

// Limits are four standard errors of 50 000 draws; the seed is fixed, so the test does not depend on luck.
test('uniform and normal draws have the mean, variance and tails they should', () => {
  const even = draws(new RandomStream(1), 50_000, 'uniform');
  expect(Math.abs(mean(even) - 1 / 2)).toBeLessThan(0.0052);
  expect(Math.abs(variance(even) - 1 / 12)).toBeLessThan(0.0014);
  const normal = draws(new RandomStream(2), 50_000, 'normal');
  expect(Math.abs(mean(normal))).toBeLessThan(0.018);
  expect(Math.abs(variance(normal) - 1)).toBeLessThan(0.026);
  expect(Math.abs(sampleKurtosis(normal))).toBeLessThan(0.09);
});

test('streams of one seed differ, and each repeats itself', () => {
  fc.assert(
    fc.property(fc.maxSafeNat(), fc.nat(), fc.nat(), (seed, a, b) => {
      const first = draws(new RandomStream(seed, a), 9, 'uniform');
      expect(draws(new RandomStream(seed, a), 9, 'uniform')).toEqual(first);
      expect(draws(new RandomStream(seed, a, 0, 1), 9, 'uniform')).not.toEqual(first);
      if (a !== b) expect(draws(new RandomStream(seed, b), 9, 'uniform')).not.toEqual(first);
    }),
  );
});

test('a seed that is not a whole number in range is refused', () => {
  expect(() => new RandomStream(0.5)).toThrow('seed must be a whole number from 0 to 9007199254740991, got 0.5');
  expect(() => new RandomStream(-1)).toThrow(RangeError);
  expect(() => new RandomStream(Number.NaN)).toThrow(RangeError);
});
