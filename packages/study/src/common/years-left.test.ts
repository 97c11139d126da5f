import { expect, test } from 'vitest';
import { createYearsLeft, leaveYears, takeYear } from './years-left.js';

const takeAll = (left: SharedArrayBuffer): number[] => {
  const taken: number[] = [];
  for (let year = takeYear(left); year !== null; year = takeYear(left)) taken.push(year);
  return taken;
};

test('every year is taken once, and none before it is left', () => {
  const left = createYearsLeft(1);
  expect(takeAll(left)).toEqual([]);
  leaveYears(left, 4);
  expect(takeAll(left)).toEqual([1, 2, 3]);
  leaveYears(left, 6);
  expect([takeYear(left), takeYear(left), takeYear(left)]).toEqual([4, 5, null]);
});

test('a run that is given up hands out no more years', () => {
  const left = createYearsLeft(0);
  leaveYears(left, 10);
  expect(takeYear(left)).toBe(0);
  leaveYears(left, 0);
  expect(takeYear(left)).toBe(null);
});
