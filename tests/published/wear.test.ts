import { ageingSpeed, minerSum, rainflow } from '@wintergap/battery';
import { expect, test } from 'vitest';

// ASTM E1049-85, figure 6: the series and its count by range. From memory; worked again by the rule of section 5.4.4,
// and twice range times count adds up to the path walked: 3+4+8+6+4+7+8+6 = 46 = 2 (1.5 + 6 + 3 + 8 + 4.5).
test('counts the example of ASTM E1049 as printed', () => {
  const counts = new Map<number, number>();
  for (const { range, count } of rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2])) {
    counts.set(range, (counts.get(range) ?? 0) + count);
  }
  expect([...counts].sort((a, b) => a[0] - b[0])).toEqual([
    [3, 0.5],
    [4, 1.5],
    [6, 0.5],
    [8, 1],
    [9, 0.5],
  ]);
});

// The means of the same figure: -2..1 has -0.5, 1..-3 has -1, -1..3 has +1, -3..5 has +1, 5..-4 has 0.5, and so on.
test('gives each cycle of the example its mean', () => {
  expect(rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2])).toEqual([
    { range: 3, mean: -0.5, count: 0.5 },
    { range: 4, mean: -1, count: 0.5 },
    { range: 4, mean: 1, count: 1 },
    { range: 8, mean: 1, count: 0.5 },
    { range: 9, mean: 0.5, count: 0.5 },
    { range: 8, mean: 0, count: 0.5 },
    { range: 6, mean: 1, count: 0.5 },
  ]);
});

// Miner's rule: damage adds as count over cycles to failure.
test('a hundred cycles of each of two depths use their shares of life', () => {
  const table = [
    { depth: 0.2, cycles: 4000 },
    { depth: 0.8, cycles: 1000 },
  ];
  const cycles = [
    { range: 0.2, mean: 0.9, count: 100 },
    { range: 0.8, mean: 0.6, count: 100 },
  ];
  expect(minerSum(cycles, table)).toBeCloseTo(100 / 4000 + 100 / 1000, 12);
});

// IEEE 450 and 1188 practice: life halves for each 8-10 K above 25 degC.
test('a cabinet at 45 degC ages a bank four times as fast as one at 25 degC', () => {
  expect(ageingSpeed(45) / ageingSpeed(25)).toBeCloseTo(4, 12);
});
