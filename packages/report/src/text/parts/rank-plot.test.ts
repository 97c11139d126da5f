import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rankPlot } from './rank-plot.js';

test('puts values in rising order, labels the largest and its half, and marks usual and one in ten', () => {
  const bar = '#'.repeat(15);
  const gap = (columns: number) => ' '.repeat(15 * columns);
  expect(rankPlot([40, 10, 20, 30])).toBe(
    [
      `      40 |${gap(3)}${bar}`,
      `         |${gap(3)}${bar}`,
      `         |${gap(2)}${bar}${bar}`,
      `         |${gap(2)}${bar}${bar}`,
      `         |${gap(2)}${bar}${bar}`,
      `      20 |${gap(1)}${bar}${bar}${bar}`,
      `         |${gap(1)}${bar}${bar}${bar}`,
      `         |${bar}${bar}${bar}${bar}`,
      `         |${bar}${bar}${bar}${bar}`,
      `         |${bar}${bar}${bar}${bar}`,
      `       0 +${'-'.repeat(60)}`,
      `${' '.repeat(39)}^ usual${' '.repeat(17)}^ one in ten`,
    ].join('\n'),
  );
});

test('stays within 80 columns of plain characters for any number of years', () => {
  // Thousandths, and years without a run.
  const hours = fc.oneof(
    fc.constant(0),
    fc.integer({ min: 0, max: 8_760_000 }).map((parts) => parts / 1000),
  );
  fc.assert(
    fc.property(fc.array(hours, { minLength: 1, maxLength: 300 }), (values) => {
      for (const line of rankPlot(values).split('\n')) expect(line).toMatch(/^[ -~]{1,80}$/);
    }),
    { numRuns: 50 },
  );
});
