import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { type DesignYears, isBetter, leadersOf, matters, meritOf, moreYearsCouldTell } from './merit.js';

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

test('an engine that one design runs in one year makes engine hours what decides', () => {
  expect(meritOf([design('none', [0, 0]), design('seldom', [0, 3])])).toBe('generatorHours');
});

// Of 200 h a hundredth is 2 h; half an hour counts only where there are fewer than 50.
test('of many engine hours a hundredth is the least that counts', () => {
  const many = design('many', [200, 210, 190, 205, 195]);
  const less = (hours: number) =>
    design(
      'less',
      [200, 210, 190, 205, 195].map((of) => of - hours),
    );
  expect(isBetter(less(1), many)).toBe(false);
  expect(isBetter(less(3), many)).toBe(true);
  expect([matters(0.5, 10, 'generatorHours'), matters(0.49, 10, 'generatorHours')]).toEqual([true, false]);
  expect([matters(2, 200, 'darkKWh'), matters(1.9, 200, 'darkKWh')]).toEqual([true, false]);
});

test('less dark load is better at as many engine hours, and not at more', () => {
  const dark = design('dark', [50, 60, 40, 55, 45], [9, 10, 8, 9, 10]);
  expect(isBetter(base, dark)).toBe(true);
  expect(isBetter(design('bright', [70, 80, 60, 75, 65]), dark)).toBe(false);
});

test('more years are asked for where the best is in doubt, in whatever order the designs come', () => {
  const lucky = design('lucky', [38, 64, 41, 47, 51]);
  expect(moreYearsCouldTell([lucky, base])).toBe(true);
  expect(moreYearsCouldTell([base, design('clearly worse', [70, 80, 60, 75, 65])])).toBe(false);
  expect(moreYearsCouldTell([base])).toBe(false);
  expect(moreYearsCouldTell([])).toBe(false);
});

test('a mean difference of just the least that counts is worth more years', () => {
  // Of 10 h it is half an hour: 2 - 1 + 0.5 + 0.5 over four years.
  expect(moreYearsCouldTell([design('base', [10, 10, 10, 10]), design('half', [12, 9, 10.5, 10.5])])).toBe(true);
});
