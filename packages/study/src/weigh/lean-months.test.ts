import { hoursPerYear, monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { leanMonths, sumInMonths } from './lean-months.js';

/** A year whose engine runs in some months and whose load stays dark in one hour of others. */
function yearOf(engine: readonly number[], dark: readonly number[]): YearResult {
  const darkWh = new Float64Array(hoursPerYear);
  for (const month of dark) darkWh[monthSpan(month - 1).fromHour] = 1;
  const months = Array.from({ length: 12 }, (_, m) => ({ hours: engine.includes(m + 1) ? 2 : 0 }));
  return { ledger: { darkWh }, summary: { generator: { months } } } as unknown as YearResult;
}

test('a month is lean in which any design runs its engine or leaves load dark', () => {
  expect(leanMonths([yearOf([12], [])])).toEqual([12]);
  expect(leanMonths([yearOf([], [1, 2])])).toEqual([1, 2]);
  expect(leanMonths([yearOf([12], []), yearOf([11], [1])])).toEqual([1, 11, 12]);
  expect(leanMonths([yearOf([], [])])).toEqual([]);
});

// 31 days in January, 30 in November: 744 and 720 hours.
test('a series is summed over the hours of the months named', () => {
  const hourly = new Float64Array(hoursPerYear).fill(2);
  expect(sumInMonths(hourly, [1, 11])).toBe(2 * (744 + 720));
  expect(sumInMonths(hourly, [])).toBe(0);
});
