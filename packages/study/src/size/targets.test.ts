import { expect, test } from 'vitest';
import { badness, missesOf, targetFigures } from './targets.js';

const values = { generatorHours: 60, fuelLitres: 100, darkHours: 0, autonomyDays: 3 };

test('a figure that is just at its target keeps it, hours from above and days of autonomy from below', () => {
  expect(missesOf(values, { generatorHours: 60, fuelLitres: 100, darkHours: 0, autonomyDays: 3 })).toEqual([]);
  expect(missesOf(values, { generatorHours: 50, autonomyDays: 4 })).toEqual([
    { figure: 'generatorHours', limit: 50, value: 60, by: 10 },
    { figure: 'autonomyDays', limit: 4, value: 3, by: 1 },
  ]);
});

test('a target of none is one, and what has no target is not asked for', () => {
  expect(targetFigures({ darkHours: 0 })).toEqual(['darkHours']);
  expect(missesOf({ ...values, darkHours: 1 }, { darkHours: 0 })).toHaveLength(1);
  expect(missesOf({ ...values, fuelLitres: 9999 }, { darkHours: 0 })).toEqual([]);
});

test('more hours are worse, more autonomy is better', () => {
  expect(badness('generatorHours', 60)).toBeGreaterThan(badness('generatorHours', 50));
  expect(badness('autonomyDays', 4)).toBeLessThan(badness('autonomyDays', 3));
});
