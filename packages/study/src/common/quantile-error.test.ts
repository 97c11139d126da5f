import { RandomStream } from '@wintergap/weather';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { confidenceWithin, quantileError } from './quantile-error.js';

// Kendall & Stuart, section 10.10 (from memory): sqrt(pi / 2) = 1.2533 for the median, 1.7094 for the 0.9 quantile.
test('the error of a median is 1.2533 times that of the mean, of a one-in-ten value 1.7094 times', () => {
  const values = [3, 5, 8, 13, 21, 34];
  const ofMean = sampleStandardDeviation(values) / Math.sqrt(6);
  expect(quantileError(values, 0.5) / ofMean).toBeCloseTo(1.2533, 3);
  expect(quantileError(values, 0.9) / ofMean).toBeCloseTo(1.7094, 2);
});

test('medians of many samples spread by the error that one sample tells', () => {
  const random = new RandomStream(5, 0, 0);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random.uniform())) * Math.cos(2 * Math.PI * random.uniform());
  const samples = Array.from({ length: 2000 }, () => Array.from({ length: 25 }, normal));
  const medians = samples.map((values) => values.toSorted((a, b) => a - b)[12]!);
  const told = mean(samples.map((values) => quantileError(values, 0.5)));
  // 2000 samples know a spread to 1.6 %; the formula is that of large samples.
  expect(told / sampleStandardDeviation(medians)).toBeCloseTo(1, 1);
});

test('one standard error within a limit is 84 % sure, on the limit 50 %, and one year knows only yes or no', () => {
  expect(confidenceWithin(2, 2)).toBeCloseTo(0.8413, 3);
  expect(confidenceWithin(0, 2)).toBeCloseTo(0.5, 6);
  expect([confidenceWithin(0, 0), confidenceWithin(-1, quantileError([7], 0.5))]).toEqual([1, 0]);
});

// The standard deviation of 3 and 5 is sqrt(2), that of their mean 1.
test('two years show a spread', () => {
  expect(quantileError([3, 5], 0.5)).toBeCloseTo(1.2533, 3);
});
