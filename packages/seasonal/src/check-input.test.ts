import { expect, test } from 'vitest';
import { checkSeries } from './check-input.js';

test('two series are of the same length, not empty, and of amounts from nothing to a million million kilowatt-hours', () => {
  const check = (a: number[], b: number[]) => () => checkSeries('supply', a, 'demand', b);
  expect(check([0], [1e15])).not.toThrow();
  expect(check([], [])).toThrow('supply and demand must have the same length above 0, got 0 and 0');
  expect(check([1], [1, 2])).toThrow('got 1 and 2');
  for (const amount of [-1e-9, 1.1e15, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(check([1, amount], [1, 1])).toThrow('supply at index 1 must be');
    expect(check([1, 1], [amount, 1])).toThrow('demand at index 0 must be');
  }
});
