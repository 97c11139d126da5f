import { ageingSpeed, minerSum, rainflow } from '@wintergap/battery';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// ASTM E1049-85, figure 6: the series and its count by range. From memory; worked again by the rule of section 5.4.4,
// and twice range times count adds up to the path walked: 3+4+8+6+4+7+8+6 = 46 = 2 (1.5 + 6 + 3 + 8 + 4.5).
test('counts the example of ASTM E1049 as printed', () => {
  const counts = new Map<number, number>();
  for (const { range, count } of rainflow([-2, 1, -3, 5, -1, 3, -4, 4, -2])) {
    counts.set(range, (counts.get(range) ?? 0) + count);
  }
  const printed = [
    [3, 0.5],
    [4, 1.5],
    [6, 0.5],
    [8, 1],
    [9, 0.5],
  ] as const;
  expect([...counts.keys()].sort((a, b) => a - b)).toEqual(printed.map(([range]) => range));
  const figure: Source = { from: 'ASTM E1049-85, figure 6', sure: 'from memory' };
  for (const [range, count] of printed)
    holds(figure, `cycles of range ${range}`, counts.get(range) ?? 0, count, { within: 0 });
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
  const miner: Source = { from: "Miner's rule, 1945", sure: 'recomputed' };
  holds(miner, 'share of life used by a hundred cycles each of two depths', minerSum(cycles, table), 0.125, {
    within: 1e-12,
  });
});

// IEEE 450 and 1188 practice: life halves for each 8-10 K above 25 degC.
test('a cabinet at 45 degC ages a bank four times as fast as one at 25 degC', () => {
  const rule: Source = { from: 'IEEE 450 and 1188, halving each 8 to 10 K', sure: 'from memory' };
  holds(rule, 'speed of ageing at 45 over 25 degC', ageingSpeed(45) / ageingSpeed(25), 4, { within: 1e-12 });
});
