import { RandomStream } from '@wintergap/weather';
import { expect, test } from 'vitest';
import { quantileRange } from './quantile-range.js';

const ranks = (n: number) => Array.from({ length: n }, (_, i) => i + 1);

// Ranks that enclose the median with at least 90 %, as in tables to the sign test: from the binomial chances
// P(at most 1 of 10) = 11/1024, P(at most 2) = 56/1024; P(at most 5 of 20) = 0.0207, P(at most 6) = 0.0577.
test.each([
  [10, 2, 9],
  [20, 6, 15],
])('the median of %d values lies between those of rank %d and %d', (n, low, high) => {
  expect(quantileRange(ranks(n), 0.5)).toMatchObject({ low, high });
});

// 0.9^28 = 0.0523 and 0.9^29 = 0.0471: only then is it 95 % sure that one value lies beyond.
test('the 90th percentile has no upper bound until there are 29 values', () => {
  expect(quantileRange(ranks(28), 0.9).high).toBeNull();
  expect(quantileRange(ranks(29), 0.9).high).toBe(29);
});

test('one value bounds nothing', () => {
  expect(quantileRange([7], 0.9)).toEqual({ value: 7, low: null, high: null });
});

// The bounds promise 90 % or a little more, whatever the distribution; 2000 samples leave 0.7 % of scatter.
test('the bounds of 60 values hold the true 90th percentile nine times in ten', () => {
  const random = new RandomStream(5);
  let held = 0;
  for (let sample = 0; sample < 2000; sample++) {
    const values = Array.from({ length: 60 }, () => random.uniform()).sort((a, b) => a - b);
    const { low, high } = quantileRange(values, 0.9);
    if (low! <= 0.9 && high! >= 0.9) held++;
  }
  expect(held / 2000).toBeGreaterThan(0.885);
  expect(held / 2000).toBeLessThan(0.97);
});

test('no value, and no share of the values, have no quantile', () => {
  expect(() => quantileRange([], 0.5)).toThrow('a quantile needs at least one value and p from 0 to 1, got 0 and 0.5');
  expect(() => quantileRange([1, 2], 1.5)).toThrow('got 2 and 1.5');
});
