import { expect, test } from 'vitest';
import { rangeLines } from './range-lines.js';

const years = (from: number, step: number) => Array.from({ length: 11 }, (_, i) => from + step * i);

test('each design has its line on one scale, with the usual and the one-in-ten year marked', () => {
  const all = rangeLines(
    [
      { name: 'base', values: years(20, 6) },
      { name: 'a design with a very long name', values: years(0, 4) },
    ],
    'h',
  ).split('\n');
  const [first = '', second = '', scale = ''] = all;
  // 20 to 80 of 80 h: median 50, ninth decile 74.
  expect(first).toBe(`base${' '.repeat(16 + 14)}${'-'.repeat(22)}|${'-'.repeat(16)}o----`);
  expect(second.startsWith('a design with a v.  -')).toBe(true);
  expect(scale).toMatch(/^ {20}0 .* 20 .* 40 .* 60 .* 80 h$/);
  for (const line of all) expect(line.length).toBeLessThanOrEqual(80);
});

test('a design that never runs the engine, and years of one, are drawn too', () => {
  expect(rangeLines([{ name: 'sun only', values: [0, 0, 0] }], 'h').split('\n')[0]).toBe(`sun only${' '.repeat(12)}8`);
  expect(rangeLines([{ name: 'one year', values: [52] }], 'h')).toContain('8');
});
