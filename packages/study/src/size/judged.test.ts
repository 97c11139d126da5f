import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { judgedAgainst } from './judged.js';

const years = (hours: readonly number[], days: readonly number[] = hours.map(() => 5)) =>
  hours.map(
    (generatorHours, i) =>
      ({ generatorHours, fuelLitres: generatorHours, darkHours: 0, autonomyDays: days[i] }) as YearFigures,
  );

test('years that are all alike keep a target surely or miss it surely, and the target itself is kept', () => {
  const sure = (limit: number) => judgedAgainst(years([40, 40, 40]), { generatorHours: limit }, 0.5).confidence;
  expect([sure(39), sure(40), sure(41)]).toEqual([0, 1, 1]);
});

test('two years are enough to say how surely', () => {
  expect(judgedAgainst(years([40, 40]), { generatorHours: 50 }, 0.5).confidence).toBe(1);
});

test('one year alone says whether a target is kept, not how surely', () => {
  const { confidence, misses, errors } = judgedAgainst(years([40]), { generatorHours: 30 }, 0.5);
  expect(confidence).toBeNull();
  expect(misses).toEqual([{ figure: 'generatorHours', limit: 30, value: 40, by: 10 }]);
  expect(errors.generatorHours).toBe(0);
});

// The standard deviation of 30, 40, 50 is 10; the error of their median 1.2533 x 10 / sqrt(3) = 7.236. A limit one error above
// is kept with 84 %.
test('how sure a target is kept follows from its distance in standard errors, of the least sure of several', () => {
  const of = years([30, 50, 40], [5, 5, 5]);
  const { figures, errors, confidence } = judgedAgainst(of, { generatorHours: 47.236, autonomyDays: 4 }, 0.5);
  expect([figures.generatorHours, figures.autonomyDays]).toEqual([40, 5]);
  expect(errors.generatorHours).toBeCloseTo(7.236, 2);
  expect(confidence).toBeCloseTo(0.841, 2);
  expect(judgedAgainst(of, { generatorHours: 47.236, autonomyDays: 6 }, 0.5).confidence).toBe(0);
});

test('more days of autonomy than asked for are on the safe side', () => {
  const of = years([1, 1, 1], [4, 5, 6]);
  expect(judgedAgainst(of, { autonomyDays: 4 }, 0.5).confidence!).toBeGreaterThan(0.5);
  expect(judgedAgainst(of, { autonomyDays: 6 }, 0.5).confidence!).toBeLessThan(0.5);
});
