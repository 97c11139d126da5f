import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { type DesignYears, isBetter, leadersOf, meritOf, moreYearsCouldTell } from './merit.js';

const design = (name: string, hours: readonly number[], dark: readonly number[] = hours.map(() => 0)): DesignYears => ({
  name,
  years: hours.map((generatorHours, i) => ({ generatorHours, darkKWh: dark[i]! }) as YearFigures),
});
const base = design('base', [50, 60, 40, 55, 45]);

test('fewer engine hours are better only if they leave no more load dark', () => {
  const less = [45, 55, 36, 50, 40];
  expect(isBetter(design('steeper', less), base)).toBe(true);
  expect(isBetter(design('darker', less, [9, 10, 8, 9, 10]), base)).toBe(false);
});

test('a design that chance lets look better leads beside the one it is held against', () => {
  const lucky = design('lucky', [38, 64, 41, 47, 51]);
  expect(leadersOf([base, lucky]).map(({ name }) => name)).toEqual(['base', 'lucky']);
  expect(moreYearsCouldTell([base, lucky])).toBe(true);
});

test('what nobody decides on is a tie however sure it is, and more years are not asked for', () => {
  const tenth = design('a tenth less', [49.9, 59.9, 39.9, 54.9, 44.9]);
  expect(leadersOf([base, tenth])).toHaveLength(2);
  expect(moreYearsCouldTell([base, tenth])).toBe(false);
});

test('places without an engine are held against each other by what stays dark', () => {
  const none = [0, 0, 0, 0, 0];
  const dim = design('dim', none, [20, 30, 25, 22, 28]);
  const bright = design('bright', none, [10, 14, 12, 11, 13]);
  expect(meritOf([dim, bright])).toBe('darkKWh');
  expect(leadersOf([dim, bright]).map(({ name }) => name)).toEqual(['bright']);
});
