import { expect, test } from 'vitest';
import { studentQuantile } from './student.js';

// Abramowitz and Stegun (1964), table 26.10, columns 0.90 and 0.95 two-sided (from memory): t(0.95) and t(0.975).
test.each([
  [0.95, 10, 1.812],
  [0.95, 24, 1.711],
  [0.95, 99, 1.66],
  [0.975, 24, 2.064],
  [0.975, 60, 2.0],
])('t at %f with %i degrees of freedom is %f', (p, n, printed) => {
  // The normal quantile beneath it is good to about 5e-4.
  expect(studentQuantile(p, n)).toBeCloseTo(printed, 2);
});

test('the quantile is symmetric about 0', () => {
  expect(studentQuantile(0.05, 24)).toBeCloseTo(-studentQuantile(0.95, 24), 3);
});
