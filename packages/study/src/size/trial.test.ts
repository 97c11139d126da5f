import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { nearestTo } from './nearest.js';
import { judgedShare, judgedValue, yearsToFail } from './trial.js';

const figures = (of: Partial<YearFigures>): YearFigures => ({
  weather: 'made up',
  generatorHours: 0,
  generatorMonthHours: new Array(12).fill(0),
  generatorWeekHours: new Array(52).fill(0),
  starts: 0,
  fuelLitres: 0,
  darkHours: 0,
  darkKWh: 0,
  loadKWh: 0,
  throttledKWh: 0,
  lowestStateOfCharge: 0.5,
  autonomyDays: 5,
  ghiKWhPerM2: 1000,
  ...of,
});

test('a design given up early would have failed on all years too', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 10, maxLength: 60 }), (hours) => {
      const limit = 6;
      const past = hours.filter((value) => value > limit).length;
      fc.pre(past >= yearsToFail(hours.length, 0.9));
      const years = hours.map((generatorHours) => figures({ generatorHours }));
      expect(judgedValue(years, 'generatorHours', 0.9)).toBeGreaterThan(limit);
      const mirrored = hours.map((value) => figures({ autonomyDays: 10 - value }));
      expect(judgedValue(mirrored, 'autonomyDays', 0.9)).toBeLessThan(10 - limit);
    }),
  );
});

// n = 40: floor(0.9 x 39) = 35, so five years past the limit stand at ranks 35 to 39.
test('of 40 years the fifth past a target decides', () => {
  expect(yearsToFail(40, 0.9)).toBe(5);
});

test('the one-in-ten year has the larger hours and the smaller autonomy', () => {
  const years = Array.from({ length: 11 }, (_, i) => figures({ generatorHours: i, autonomyDays: i }));
  expect(judgedValue(years, 'generatorHours', 0.9)).toBeCloseTo(9, 12);
  expect(judgedValue(years, 'autonomyDays', 0.9)).toBeCloseTo(1, 12);
});

test('of 0 to 100 hours the usual year has 50, and one year in ten more than 90', () => {
  const years = Array.from({ length: 101 }, (_, i) => figures({ generatorHours: (i * 37) % 101 }));
  expect(judgedValue(years, 'generatorHours', judgedShare.usual)).toBe(50);
  expect(judgedValue(years, 'generatorHours', judgedShare['one-in-ten'])).toBeCloseTo(90, 12);
});

test('the nearest design has the smallest misses, each taken against the worst of its kind', () => {
  const designs = [
    { name: 'much fuel', years: [figures({ fuelLitres: 200, generatorHours: 10 })] },
    { name: 'little of both', years: [figures({ fuelLitres: 120, generatorHours: 15 })] },
    { name: 'many hours', years: [figures({ fuelLitres: 90, generatorHours: 60 })] },
  ];
  // Shares: 100/100 + 0; 20/100 + 5/50; 0 + 50/50.
  expect(nearestTo({ fuelLitres: 100, generatorHours: 10 }, designs, 0.9).name).toBe('little of both');
});
