import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { nearestTo } from './nearest.js';

const design = (name: string, hours: readonly number[], fuelLitres = 0) => ({
  name,
  years: hours.map((generatorHours) => ({ generatorHours, fuelLitres, darkHours: 0, autonomyDays: 5 }) as YearFigures),
});

test('of designs that come equally near the first is taken', () => {
  const equal = ['one', 'other'].map((name) => design(name, [30, 30]));
  expect(nearestTo({ generatorHours: 20 }, equal, 0.5).name).toBe('one');
  expect(nearestTo({ generatorHours: 40 }, equal, 0.5).name).toBe('one');
});

test('a design is not the nearer for the years that only it was run through', () => {
  // Over the two common years the medians are 40 and 50; over all of them the first would have 90.
  const designs = [design('long', [40, 40, 90, 90, 90]), design('short', [50, 50])];
  expect(nearestTo({ generatorHours: 20 }, designs, 0.5).name).toBe('long');
});

test('a target that all keep says nothing of them', () => {
  const designs = [design('more fuel', [30], 9), design('fewer hours', [25], 10)];
  expect(nearestTo({ generatorHours: 20, fuelLitres: 50 }, designs, 0.5).name).toBe('fewer hours');
});

test('of one target the smallest miss decides, wherever it stands', () => {
  const designs = [design('far', [30]), design('near', [25]), design('farther', [40])];
  expect(nearestTo({ generatorHours: 20 }, designs, 0.5).name).toBe('near');
});

// Shares of the worst miss: 30 of 100 L against 20 of 50 h.
test('a miss counts as a share of the worst of its own target, not in its unit', () => {
  const designs = [design('less fuel', [10], 130), design('fewer hours', [30], 90), design('worst', [60], 200)];
  expect(nearestTo({ generatorHours: 10, fuelLitres: 100 }, designs, 0.5).name).toBe('less fuel');
});
