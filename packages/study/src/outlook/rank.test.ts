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

// Five values enclose their median by the smallest and the largest: (1/2)^5 = 3 % lie beyond each. The nine-tenths point of
// the bad side has no worse bound, and its better one is the third: P(at most 2 of 5 at 0.9) = 0.9 %, at most 3: 8.1 %.
test('few years bound a small charge on the side of the good years alone', () => {
  const years = [3, 1, 5, 2, 4].map((autonomyDays) => ({ autonomyDays }) as YearFigures);
  const { usual, oneInTen, worst, worstYear } = rankYears(years, 'autonomyDays');
  expect(usual).toEqual({ value: 3, low: 1, high: 5 });
  expect(oneInTen).toEqual({ value: expect.closeTo(1.4, 12), low: null, high: 3 });
  expect([worst, worstYear]).toEqual([1, 1]);
});
