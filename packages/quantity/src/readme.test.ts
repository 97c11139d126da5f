import { expect, test } from 'vitest';
import { formatQuantity } from './format-quantity.js';
import { parseQuantity } from './parse-quantity.js';

test('the example of the README gives the results stated there', () => {
  expect(parseQuantity('18 ft', 'length')).toBeCloseTo(5.4864, 12);
  expect(parseQuantity('8 AWG', 'conductorArea')).toBeCloseTo(8.3655, 3);
  expect(parseQuantity('-0.39 %', 'fractionPerK')).toBeCloseTo(-0.0039, 15);
  expect(formatQuantity(5.4864, 'length', 'us')).toBe('18 ft');
  expect(() => parseQuantity(430, 'length')).toThrow('430 has no unit; write 430 m or 1411 ft');
});
