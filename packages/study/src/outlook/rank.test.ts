import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { rankYears } from './rank.js';

// Of 0 to 100 the nine-tenths point is 90, the half 50; where low is bad, 10.
test('one year in ten is as bad or worse, whichever side is bad', () => {
  const years = Array.from(
    { length: 101 },
    (_, k) => ({ generatorHours: (k * 37) % 101, lowestStateOfCharge: ((k * 37) % 101) / 100 }) as YearFigures,
  );
  const hours = rankYears(years, 'generatorHours');
  expect([hours.usual.value, hours.oneInTen.value, hours.worst]).toEqual([50, 90, 100]);
  const charge = rankYears(years, 'lowestStateOfCharge');
  expect(charge.oneInTen.value).toBeCloseTo(0.1, 12);
  expect(charge.worst).toBe(0);
});
