import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { withTies } from './ties.js';

const weighed = (name: string, hours: readonly number[], dark = 0) => ({
  thing: { name },
  yearsWithout: hours.map((generatorHours) => ({ generatorHours, darkKWh: dark }) as YearFigures),
});

test('things whose years chance does not tell apart are tied with each other, in both directions', () => {
  const things = withTies([
    weighed('trees', [50, 60, 40, 55, 45]),
    weighed('dirt', [38, 64, 41, 47, 51]),
    weighed('snow', [90, 95, 80, 98, 88]),
  ]);
  expect(things).toEqual([
    { name: 'trees', tiedWith: ['dirt'] },
    { name: 'dirt', tiedWith: ['trees'] },
    { name: 'snow', tiedWith: [] },
  ]);
});

test('a middle one may be tied with two that are told apart', () => {
  // Of 100 h a hundredth is the least that counts: a step of 0.9 h does not, two do.
  const steady = (hours: number) => new Array<number>(5).fill(hours).map((of, i) => of + (i % 2) / 10);
  const things = withTies([weighed('a', steady(100)), weighed('b', steady(100.9)), weighed('c', steady(101.8))]);
  expect(things.map(({ tiedWith }) => tiedWith)).toEqual([['b'], ['a', 'c'], ['b']]);
});

test('without an engine what stays dark decides', () => {
  const none = [0, 0, 0];
  expect(withTies([weighed('cold', none, 5), weighed('dirt', none, 9)]).map(({ tiedWith }) => tiedWith)).toEqual([
    [],
    [],
  ]);
});
