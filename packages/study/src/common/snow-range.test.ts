import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { snowCovers } from './snow-range.js';

const result = (...shares: (number[] | null)[]) =>
  ({
    arrays: shares.map((snowShare) => ({ snowShare: snowShare && Float64Array.from(snowShare) })),
  }) as unknown as YearResult;

test('snow covers a design where it lies on one of its arrays for an hour', () => {
  expect(snowCovers([result([0, 0, 0.2])])).toBe(true);
  expect(snowCovers([result([0, 0], [0, 1])])).toBe(true);
  expect(snowCovers([result([0, 0]), result([1, 0])])).toBe(true);
});

test('where it never lies, or is not known, it covers none', () => {
  expect(snowCovers([result([0, 0, 0])])).toBe(false);
  expect(snowCovers([result(null)])).toBe(false);
  expect(snowCovers([])).toBe(false);
});
