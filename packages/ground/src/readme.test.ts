import { expect, test } from 'vitest';
import { dateInWords, hourOfYear, monthOfHour, monthSpan, mustBeWhole, mustLie, OutOfRangeError } from './index.js';

test('the example of the README gives the results printed there', () => {
  expect(hourOfYear(3, 1, 0)).toBe(1416);
  expect(monthOfHour(1416)).toBe(2);
  expect(monthSpan(2)).toEqual({ fromHour: 1416, toHour: 2160, fromDay: 59, toDay: 90, days: 31 });
  expect(dateInWords(59)).toBe('1 March');
  expect(() => mustLie('tiltDeg', 95, 0, 90)).toThrow(new OutOfRangeError('tiltDeg must be 0 to 90, got 95'));
});

test('a number that is not whole is refused with the range it may have', () => {
  expect(() => mustBeWhole('years', 2.5, 1, 200)).toThrow('years must be a whole number from 1 to 200, got 2.5');
  expect(() => mustBeWhole('count', -1, 0, Infinity)).toThrow('count must be a whole number, 0 or more, got -1');
  expect(() => mustBeWhole('count', 3, 0, Infinity)).not.toThrow();
});
