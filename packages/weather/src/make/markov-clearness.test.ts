import { monthOfHour } from '@wintergap/ground';
import { mean, sampleCorrelation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { matrixFor, nextClearness, stateOf, wanderingClearness } from './markov-clearness.js';
import { clearnessMatrices } from './markov-matrices.js';
import { RandomStream } from './random.js';

test('a value belongs to the state whose tenth of the range it lies in', () => {
  const matrix = matrixFor(0.3);
  expect(matrix).toBe(clearnessMatrices[0]);
  expect(matrixFor(0.301)).toBe(clearnessMatrices[1]);
  expect(matrixFor(0.95)).toBe(clearnessMatrices[9]);
  // 0.031 to 0.705 in ten states of 0.0674.
  expect(stateOf(0.031, matrix)).toBe(0);
  expect(stateOf(0.098, matrix)).toBe(0);
  expect(stateOf(0.099, matrix)).toBe(1);
  expect(stateOf(0.704, matrix)).toBe(9);
  expect(stateOf(0, matrix)).toBe(0);
  expect(stateOf(1, matrix)).toBe(9);
});

// The limit is four standard errors of the mean of 20 000 days that resemble the day before.
test('a long chain keeps its mean, its range and its memory', () => {
  const random = new RandomStream(5);
  const days: number[] = [];
  let today = 0.4;
  for (let day = 0; day < 20_000; day++) {
    today = nextClearness(today, 0.43, random);
    days.push(today);
  }
  const matrix = matrixFor(0.43);
  expect(Math.min(...days)).toBeGreaterThanOrEqual(matrix.minimum);
  expect(Math.max(...days)).toBeLessThanOrEqual(matrix.maximum);
  expect(Math.abs(mean(days) - 0.429)).toBeLessThan(0.007);
  const memory = sampleCorrelation(days.slice(1), days.slice(0, -1));
  expect(memory).toBeGreaterThan(0.25);
  expect(memory).toBeLessThan(0.35);
});

test('a year has 365 days, dull in a dull month and clear in a clear one', () => {
  const months = Uint8Array.from({ length: 365 }, (_, day) => monthOfHour(day * 24));
  const means = [0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2];
  means[6] = 0.68;
  const days = wanderingClearness(means, months, new RandomStream(8));
  expect(days.length).toBe(365);
  expect(mean([...days.subarray(181, 212)])).toBeGreaterThan(0.6);
  expect(mean([...days.subarray(0, 181)])).toBeLessThan(0.3);
});
