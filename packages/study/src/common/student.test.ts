import { expect, test } from 'vitest';
import { studentQuantile } from './student.js';

// Abramowitz and Stegun (1964), table 26.10, columns 0.90, 0.95 and 0.99 two-sided (from memory). The normal quantile
// beneath the expansion is good to about 5e-4; the expansion itself stops at the fourth term.
test.each([
  [1, [6.314, 12.706, 63.657], 1e-4],
  [2, [2.92, 4.303, 9.925], 2e-4],
  [3, [2.353, 3.182, 5.841], 0.015],
  [4, [2.132, 2.776, 4.604], 0.008],
  [5, [2.015, 2.571, 4.032], 0.006],
  [10, [1.812, 2.228, 3.169], 0.004],
  [24, [1.711, 2.064, 2.797], 0.004],
  [60, [1.671, 2.0, 2.66], 0.004],
  [120, [1.658, 1.98, 2.617], 0.004],
])('t with %i degrees of freedom is as printed', (n, printed, share) => {
  [0.95, 0.975, 0.995].forEach((p, i) => {
    expect(Math.abs(studentQuantile(p, n) / printed[i]! - 1), `at ${p}`).toBeLessThan(share);
  });
});

// Each term of the expansion is a polynomial in the normal quantile: at the quantile of 1 (p of 0.8413) they are 2/4, 24/96,
// 24/384 and (79 + 776 + 1482 - 1920 - 945)/92160.
test('at one standard deviation the terms are those of the printed polynomials', () => {
  const p = 0.841344746;
  const ones = (n: number) => 1 + 2 / 4 / n + 24 / 96 / n ** 2 + 24 / 384 / n ** 3 - 528 / 92_160 / n ** 4;
  for (const n of [3, 4, 7]) expect(Math.abs(studentQuantile(p, n) - ones(n))).toBeLessThan(2e-3);
});

test('the quantile is symmetric about 0', () => {
  expect(studentQuantile(0.05, 24)).toBeCloseTo(-studentQuantile(0.95, 24), 3);
});

/** The p whose normal quantile, that of endless degrees of freedom, is two. */
function probabilityOfTwo(): number {
  let [low, high] = [0.5, 1];
  for (let k = 0; k < 60; k++) {
    const middle = (low + high) / 2;
    if (studentQuantile(middle, 1e15) < 2) low = middle;
    else high = middle;
  }
  return low;
}

// The four terms at 2 are 10/4, (160 + 128 + 6)/96, (384 + 608 + 136 - 30)/384 and
// (40448 + 99328 + 47424 - 15360 - 1890)/92160.
test('at two standard deviations each term is that of the printed polynomials', () => {
  const twos = (n: number) => 2 + 10 / 4 / n + 294 / 96 / n ** 2 + 1098 / 384 / n ** 3 + 169_950 / 92_160 / n ** 4;
  const p = probabilityOfTwo();
  for (const n of [3, 5, 20]) expect(studentQuantile(p, n)).toBeCloseTo(twos(n), 9);
});
