import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  presentValueOfPayment,
  presentValueOfReplacements,
  presentValueOfSeries,
  replacementsWithin,
} from './present-value.js';

const rate = fc.integer({ min: -200, max: 300 }).map((part) => part / 1000);
const years = fc.integer({ min: 1, max: 60 });

test('a series is the sum of its payments', () => {
  fc.assert(
    fc.property(years, rate, rate, (n, discountRate, escalation) => {
      let sum = 0;
      for (let t = 1; t <= n; t++) sum += presentValueOfPayment(100 * (1 + escalation) ** t, t, discountRate);
      expect(presentValueOfSeries(100, n, discountRate, escalation) / sum).toBeCloseTo(1, 8);
    }),
  );
});

test('a price that rises as fast as money is discounted counts once for every year', () => {
  expect(presentValueOfSeries(10, 25, 0.04, 0.04)).toBe(250);
  expect(presentValueOfSeries(10, 25, 0, 0)).toBe(250);
  expect(presentValueOfSeries(10, 25, 1e-9, 0)).toBeCloseTo(250, 5);
});

test('a part is replaced when its life is over, but not at the end of the study', () => {
  expect(replacementsWithin(5, 20)).toBe(3);
  expect(replacementsWithin(6, 20)).toBe(3);
  expect(replacementsWithin(0.1, 1)).toBe(9);
  expect(replacementsWithin(25, 20)).toBe(0);
  const byHand = 1000 * (1.03 ** -5 + 1.03 ** -10 + 1.03 ** -15);
  expect(presentValueOfReplacements(1000, 5, 20, 0.03)).toBeCloseTo(byHand, 9);
  expect(presentValueOfReplacements(1000, 25, 20, 0.03)).toBe(0);
});

test('lives, years and rates out of range are refused', () => {
  expect(() => replacementsWithin(0, 20)).toThrow('everyYears must be 0.001 or more, got 0');
  expect(() => presentValueOfSeries(1, 2.5, 0.03, 0)).toThrow('years must be a whole number from 1 to 200, got 2.5');
  expect(() => presentValueOfSeries(1, 2, 3, 0)).toThrow('discountRate must be above -0.5 and up to 1 a year, got 3');
  expect(() => presentValueOfPayment(Number.NaN, 1, 0.03)).toThrow(RangeError);
});

test('the limits of rates and years themselves are allowed', () => {
  expect(presentValueOfPayment(8, 3, 1)).toBe(1);
  expect(presentValueOfPayment(5, 0, 0.5)).toBe(5);
  expect(presentValueOfSeries(1, 200, 0, 0)).toBe(200);
  for (const rate of [-0.5, 1.01, Number.NaN]) {
    expect(() => presentValueOfSeries(1, 2, 0.1, rate)).toThrow(/escalation/);
    expect(() => presentValueOfPayment(1, 2, rate)).toThrow(/discountRate/);
    expect(() => presentValueOfReplacements(1, 2, 5, rate)).toThrow(/discountRate/);
  }
  expect(() => presentValueOfPayment(1, -1, 0)).toThrow(/year/);
  expect(() => presentValueOfSeries(Number.POSITIVE_INFINITY, 2, 0, 0)).toThrow(/yearly must be a finite amount/);
  expect(() => presentValueOfReplacements(Number.NaN, 2, 5, 0)).toThrow(/cost must be a finite amount/);
  for (const n of [0, 201]) expect(() => presentValueOfReplacements(1, 2, n, 0)).toThrow(/years/);
  expect(replacementsWithin(Number.POSITIVE_INFINITY, 20)).toBe(0);
});

// Sum of (1 + d)^-t, t = 1 to 25, to the first order: 25 - d x 25 x 26 / 2. The second is a hundred-millionth of the first.
test('a rate of next to nothing takes off what its first order says', () => {
  expect(presentValueOfSeries(1e6, 25, 1e-8, 0)).toBeCloseTo(25e6 - 1e6 * 1e-8 * 325, 4);
  expect(presentValueOfSeries(1e6, 25, 0, 1e-8)).toBeCloseTo(25e6 + 1e6 * 1e-8 * 325, 4);
});
