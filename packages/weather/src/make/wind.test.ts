import { mean, sampleCorrelation, standardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { monthMeans } from './monthly-smooth.js';
import { RandomStream } from './random.js';
import { wanderingWind } from './wind.js';

const meanMs = [4, 4, 4, 4, 4, 3, 3, 3, 4, 4, 4, 0];

// Rayleigh's distribution has a standard deviation of 0.523 of its mean; the afternoon adds a little. Measured typical
// years: 0.42 in New York, 0.50 in Chicago, 0.68 in Mannheim; lag-one correlation of the hours 0.8.
test('wind has its monthly means, the spread of a Rayleigh distribution and hours that resemble the one before', () => {
  const windMs = wanderingWind(meanMs, 12, new RandomStream(6));
  monthMeans(windMs).forEach((month, m) => {
    expect(month).toBeCloseTo(meanMs[m]!, 9);
  });
  expect(windMs.every((speed) => speed >= 0 && speed < 25)).toBe(true);
  const spring = [...windMs.subarray(0, 24 * 151)];
  expect(standardDeviation(spring) / mean(spring)).toBeGreaterThan(0.48);
  expect(standardDeviation(spring) / mean(spring)).toBeLessThan(0.62);
  const memory = sampleCorrelation(spring.slice(1), spring.slice(0, -1));
  expect(memory).toBeGreaterThan(0.75);
  expect(memory).toBeLessThan(0.92);
});
