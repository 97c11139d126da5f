import { expect, test } from 'vitest';
import { dateInWords, hourOfYear, monthOfHour, mustLie, OutOfRangeError } from './index.js';

test('the example of the README gives the results printed there', () => {
  expect(hourOfYear(3, 1, 0)).toBe(1416);
  expect(monthOfHour(1416)).toBe(2);
  expect(dateInWords(59)).toBe('1 March');
  expect(() => mustLie('tiltDeg', 95, 0, 90)).toThrow(new OutOfRangeError('tiltDeg must be 0 to 90, got 95'));
});
