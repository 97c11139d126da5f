import { expect, test } from 'vitest';
import { freezingC } from './freezing.js';

test('the fuller the cell, the lower its freezing point', () => {
  let last = 1;
  for (let s = 0; s <= 1; s += 0.01) {
    expect(freezingC(s)).toBeLessThan(last);
    last = freezingC(s);
  }
});

// Between Vinal's -7.7 degC at 1.100 and -15 degC at 1.150: density 1.120 of an empty cell.
test('an empty cell freezes near -11 degC, a full one below -55 degC', () => {
  expect(freezingC(0)).toBeCloseTo(-10.62, 2);
  expect(freezingC(1)).toBeLessThan(-55);
});

test('states out of range count as empty or full', () => {
  expect(freezingC(-0.2)).toBe(freezingC(0));
  expect(freezingC(1.2)).toBe(freezingC(1));
});
