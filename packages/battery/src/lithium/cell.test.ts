import { expect, test } from 'vitest';
import { evenTable, fullnessFactor } from './cell.js';

test('a printed table is read at even steps, along straight lines from point to point', () => {
  const points = [
    [-10, 5],
    [0, 10],
    [2, 20],
    [10, 12],
  ] as const;
  expect([...evenTable(points, 5)]).toEqual([5, 7.5, 10, 17, 12]);
  expect([...evenTable(points, 2)].slice(4)).toEqual([9, 10, 20, 18, 16, 14, 12]);
  expect([
    ...evenTable(
      [
        [0, 3],
        [1, 4],
      ],
      0.5,
    ),
  ]).toEqual([3, 3.5, 4]);
});

// 1 + 0.02 over what is missing: twice with 2 % missing, and no more than 201 times.
test('the resistance to charging rises as the cell fills', () => {
  expect(fullnessFactor(0)).toBeCloseTo(1.02, 12);
  expect(fullnessFactor(0.5)).toBeCloseTo(1.04, 12);
  expect(fullnessFactor(0.98)).toBeCloseTo(2, 9);
  for (const s of [1 - 1e-4, 1 - 1e-6, 1, 1.001]) expect(fullnessFactor(s)).toBeCloseTo(201, 6);
});
