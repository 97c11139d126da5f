import fc from 'fast-check';
import { expect, test } from 'vitest';
import { restoreSum } from './restore.js';

const thousandths = (min: number, max: number) =>
  fc.integer({ min: 1000 * min, max: 1000 * max }).map((part) => part / 1000);
const pair = fc.tuple(thousandths(-1, 2), fc.oneof(fc.constant(0), fc.constant(1e-6), thousandths(0, 1000)));

test('the wanted sum is met, each value within its range, the order by share of ceiling kept', () => {
  fc.assert(
    fc.property(fc.array(pair, { minLength: 1, maxLength: 40 }), thousandths(0, 1), (pairs, part) => {
      const ceilings = Float64Array.from(pairs, ([, ceiling]) => ceiling);
      const before = Float64Array.from(pairs, ([share, ceiling]) => share * ceiling);
      const values = before.slice();
      const most = ceilings.reduce((sum, ceiling) => sum + ceiling, 0);
      restoreSum(values, ceilings, 0, values.length, part * most);
      const sum = values.reduce((total, value) => total + value, 0);
      expect(Math.abs(sum - part * most)).toBeLessThanOrEqual(1e-9 * most);
      for (let i = 0; i < values.length; i++) {
        expect(values[i]).toBeGreaterThanOrEqual(0);
        expect(values[i]).toBeLessThanOrEqual(ceilings[i]! * (1 + 1e-12));
      }
      const shares = pairs
        .map(([share], i) => ({ share, now: values[i]! / ceilings[i]! }))
        .filter(({ now }) => now > 0);
      shares.sort((a, b) => a.share - b.share);
      for (let i = 1; i < shares.length; i++)
        expect(shares[i]!.now).toBeGreaterThanOrEqual(shares[i - 1]!.now * (1 - 1e-9));
    }),
  );
});

test('a sum that is there already leaves the values as they are', () => {
  const values = Float64Array.of(10, 50, 90);
  restoreSum(values, Float64Array.of(100, 100, 100), 0, 3, 150);
  expect(values[0]).toBeCloseTo(10, 9);
  expect(values[1]).toBeCloseTo(50, 9);
  expect(values[2]).toBeCloseTo(90, 9);
});

test('more than the ceilings gives the ceilings, less than nothing gives nothing, and neighbours are left alone', () => {
  const ceilings = Float64Array.of(7, 5, 0, 5);
  const values = Float64Array.of(3, 2, 2, 2);
  restoreSum(values, ceilings, 1, 4, 99);
  expect([...values]).toEqual([3, 5, 0, 5]);
  restoreSum(values, ceilings, 1, 4, -1);
  expect([...values]).toEqual([3, 0, 0, 0]);
});
