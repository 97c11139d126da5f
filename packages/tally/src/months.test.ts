import { daysInMonth } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { monthlySums } from './months.js';

test('a constant of one adds up to the hours of each month', () => {
  expect(Array.from(monthlySums(new Float64Array(8760).fill(1)))).toEqual(daysInMonth.map((days) => days * 24));
});
