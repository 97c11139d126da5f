import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rainflow } from './rainflow.js';

test('no series, one value and a flat line hold no cycle', () => {
  for (const series of [[], [3], [2, 2, 2]]) expect(rainflow(series)).toEqual([]);
});

test('points on the way and plateaus do not count', () => {
  expect(rainflow([0, 1, 1, 2, 3, 3, 1, 0])).toEqual(rainflow([0, 3, 0]));
});

test('the largest count spans the whole series and the ranges add up to the path walked', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 60 }), (series) => {
      const cycles = rainflow(series);
      const span = Math.max(...series) - Math.min(...series);
      expect(Math.max(0, ...cycles.map(({ range }) => range))).toBe(span);
      let path = 0;
      for (let i = 1; i < series.length; i++) path += Math.abs(series[i]! - series[i - 1]!);
      expect(cycles.reduce((sum, { range, count }) => sum + 2 * range * count, 0)).toBe(path);
    }),
  );
});

// ASTM E1049 5.4.4 by hand: a range equal to the one before it closes it. At the second 3 the range 1-3 closes 3-1 as
// a full cycle; 3-1 and 1-2 then stay open.
test('a range as large as the one before closes it as a full cycle', () => {
  expect(rainflow([0, 3, 1, 3, 1, 2])).toEqual([
    { range: 2, mean: 2, count: 1 },
    { range: 3, mean: 1.5, count: 0.5 },
    { range: 2, mean: 2, count: 0.5 },
    { range: 1, mean: 1.5, count: 0.5 },
  ]);
});
