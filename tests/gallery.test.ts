import { readFileSync } from 'node:fs';
import type { Summary } from '@wintergap/tally';
import { exceededLimits, PreparedCache, siteLimits } from '@wintergap/year';
import { expect, test } from 'vitest';
// @ts-expect-error a plain script without types
import * as gallery from '../examples/places/figures.mjs';

const { places, questionOf, designsOf, summariesOf, yearCells } = gallery;
const readme = readFileSync(new URL('../examples/places/README.md', import.meta.url), 'utf8');

/** The rows of a place's table, each as its cells by column. */
function printedRows(place: string): Record<string, string>[] {
  const part = readme.split('\n### ').find((text) => text.includes(`](${place})`))!;
  const [head, , ...rows] = part
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) => line.slice(2, -2).split(' | '));
  return rows.map((cells) => Object.fromEntries(cells.map((cell, i) => [head![i]!, cell])));
}

const summaries: Record<string, Record<string, Summary>> = {};

test.each(places as string[])('%s asks in its first line and does what its table says', (place) => {
  expect(questionOf(place)).toMatch(/\?$/);
  const designs = designsOf(place);
  const found = summariesOf(designs);
  summaries[place] = Object.fromEntries(designs.map(({ name }: { name: string }, i: number) => [name, found[i]]));
  const rows = printedRows(place);
  expect(rows.map(({ design }) => design)).toEqual(designs.map(({ name }: { name: string }) => name));
  rows.forEach((row, i) => {
    expect(row).toMatchObject(yearCells(found[i]));
    expect(Number(row['one in ten, h'])).toBeGreaterThanOrEqual(Number(row['usual, h']));
  });
});

test.each(places as string[])('%s exceeds no calculated limit', (place) => {
  const prepared = new PreparedCache();
  for (const { site } of designsOf(place)) expect(exceededLimits(siteLimits(site, prepared))).toEqual([]);
});

// Rules of the trade: common practice, no source; held as orders of magnitude.
test('an efficient home with 1.5 kW on a pole runs its engine some tens of hours', () => {
  const { generator } = summaries['efficient-home.yaml']!['as it stands']!;
  expect(generator.hours).toBeGreaterThan(50 / 10);
  expect(generator.hours).toBeLessThan(50 * 4);
});

test('a place whose array is sized for the dark months throttles from spring to autumn', () => {
  const { array } = summaries['summer-surplus.yaml']!['as it stands']!;
  const share = (month: number) => array.months[month]!.throttledKWh / array.months[month]!.availableKWh;
  for (let month = 3; month <= 8; month++) expect(share(month)).toBeGreaterThan(0.6);
  expect(share(11)).toBeLessThan(0.5);
});

test('a bank of a week with a large DC set rests for weeks, one of two days does not', () => {
  const { 'as it stands': week, 'two days': days } = summaries['week-of-bank.yaml']!;
  expect(week!.bank.autonomyDays).toBeGreaterThan(6);
  expect(week!.generator.starts).toBeLessThan(days!.generator.starts);
});

test('a roof at 25 degrees in snow lets the engine run many times as long as a wall', () => {
  const { 'as it stands': roof, 'on the wall': wall } = summaries['roof-cabin.yaml']!;
  expect(roof!.generator.hours).toBeGreaterThan(3 * wall!.generator.hours);
});

test('facing the pole instead of the equator ruins the southern winter, and June is dark there', () => {
  const { 'as it stands': north, 'facing south': south } = summaries['southern-valley.yaml']!;
  expect(south!.generator.hours).toBeGreaterThan(3 * north!.generator.hours);
  expect(north!.array.months[5]!.planeKWhPerM2).toBeLessThan(north!.array.months[0]!.planeKWhPerM2);
});

test('an unheated lithium bank refuses the winter sun, a small heater lets it take it', () => {
  const { 'as it stands': cold, heated } = summaries['lithium-cabin.yaml']!;
  expect(cold!.load.darkKWh).toBeGreaterThan(10);
  expect(heated!.load.darkKWh).toBe(0);
});
