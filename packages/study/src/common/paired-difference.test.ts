import fc from 'fast-check';
import { sampleVariance } from 'simple-statistics';
import { expect, test } from 'vitest';
import { pairedDifference, yearsMean } from './paired-difference.js';

// Student (1908), Biometrika 6, section IX: additional hours of sleep of ten patients under two drugs. His mean
// difference is 1.58 with a standard deviation (divisor n) of 1.17, so 1.17 / sqrt(9) = 0.39 (0.389 in later texts).
const dextro = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
const laevo = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];

test("Student's own example of paired differences", () => {
  const { mean, standardError, lessIn, equalIn, verdict } = pairedDifference(laevo, dextro);
  expect(mean).toBeCloseTo(1.58, 10);
  expect(standardError).toBeCloseTo(0.389, 3);
  expect([lessIn, equalIn, verdict]).toEqual([0, 1, 'more']);
});

// The same data are a standard example of statistics texts: t = 4.0621 at 9 degrees of freedom (from memory).
test('mean over standard error is the printed t, and the range spans 1.833 standard errors', () => {
  const { mean, standardError, low, high } = pairedDifference(laevo, dextro);
  expect(mean / standardError).toBeCloseTo(4.0621, 3);
  // t(0.95) at 9 degrees of freedom is 1.833, Abramowitz and Stegun table 26.10 (from memory).
  expect((high! - low!) / 2 / standardError).toBeCloseTo(1.833, 2);
  const differences = laevo.map((hours, i) => hours - dextro[i]!);
  expect(standardError).toBeCloseTo(Math.sqrt(sampleVariance(differences) / 10), 12);
});

test('a difference within two standard errors is none, and so is one too small to matter', () => {
  expect(pairedDifference([3, 0, 0, 0], [0, 0, 0, 1]).verdict).toBe('none');
  expect(pairedDifference([1.1, 2.1, 3.1], [1, 2, 3], 0.5).verdict).toBe('none');
  expect(pairedDifference([1.1, 2.1, 3.1], [1, 2, 3], 0.05).verdict).toBe('more');
  expect(pairedDifference([7], [9]).verdict).toBe('none');
});

test('turning the pair round turns the sign and nothing else', () => {
  const hours = fc.array(
    fc.integer({ min: 0, max: 5000 }).map((tenths) => tenths / 10),
    { minLength: 2, maxLength: 30 },
  );
  fc.assert(
    fc.property(hours, hours, (a, b) => {
      const n = Math.min(a.length, b.length);
      const one = pairedDifference(a.slice(0, n), b.slice(0, n));
      const other = pairedDifference(b.slice(0, n), a.slice(0, n));
      expect(other.mean).toBeCloseTo(-one.mean, 9);
      expect(other.standardError).toBeCloseTo(one.standardError, 9);
      expect(one.lessIn + other.lessIn + one.equalIn).toBe(n);
    }),
  );
});

test('one year has a mean and no range', () => {
  expect(yearsMean([52])).toEqual({ mean: 52, standardError: 0, low: null, high: null, years: 1 });
});

// A run of four hours more in four years of 25 and else nothing: mean 0.64 h, error 0.30, and Student alone calls it sure.
test('a run more in a few years is no difference, one in many of them is', () => {
  const years = (runs: number) => Array.from({ length: 25 }, (_, year) => (year < runs ? 34 : 30));
  const base = new Array<number>(25).fill(30);
  const { mean, standardError, verdict } = pairedDifference(years(4), base, 0.5);
  expect(mean).toBeGreaterThan(2 * standardError);
  expect(verdict).toBe('none');
  expect(pairedDifference(years(8), base, 0.5).verdict).toBe('more');
});

// t(0.95) at one degree of freedom is 6.314; 10 and 14 differ by a standard deviation of sqrt(8), so the error is 2.
test('two years have a range, and a wide one', () => {
  const { mean, standardError, low, high } = yearsMean([10, 14]);
  expect([mean, standardError]).toEqual([12, expect.closeTo(2, 12)]);
  expect(low).toBeCloseTo(12 - 12.628, 2);
  expect(high).toBeCloseTo(12 + 12.628, 2);
});

test('a mean difference counts from the least that matters on, however sure a smaller one is', () => {
  const apart = (by: number) => pairedDifference([10 + by, 20 + by, 30 + by], [10, 20, 30], 0.5).verdict;
  expect([apart(0.4), apart(0.5), apart(-0.4), apart(-0.5)]).toEqual(['none', 'more', 'none', 'less']);
});

test('designs that never differ are not told apart', () => {
  expect(pairedDifference([3, 4, 5], [3, 4, 5])).toMatchObject({ mean: 0, equalIn: 3, verdict: 'none' });
});

test('designs that do not share their years are not held against each other', () => {
  expect(() => pairedDifference([1, 2], [1])).toThrow('designs must share their years, got 2 and 1');
  expect(() => pairedDifference([], [])).toThrow('designs must share their years, got 0 and 0');
});
