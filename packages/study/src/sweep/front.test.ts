import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DesignFront } from './front.js';
import { type RunRow, resultColumns, type SweepResults } from './row.js';

const zeros = Object.fromEntries(resultColumns.map((name) => [name, 0])) as SweepResults;
const row = (number: number, figures: Partial<SweepResults>): RunRow => ({
  number,
  id: String(number),
  values: [],
  results: { ...zeros, ...figures },
  limits: [],
  error: '',
});

function frontOf(rows: readonly RunRow[]) {
  const front = new DesignFront();
  for (const one of rows) front.add(one);
  return front.designs();
}

test('the front and its ties are the designs that no other is better than in everything, in any order', () => {
  const small = fc.integer({ min: 0, max: 4 });
  const figures = fc.record({ ratedKW: small, bankKWh: small, generatorHours: small, darkKWh: small });
  fc.assert(
    fc.property(fc.array(figures, { maxLength: 15 }), fc.boolean(), (list, turned) => {
      const rows = list.map((one, i) => row(i + 1, one));
      const names = ['ratedKW', 'bankKWh', 'generatorHours', 'darkKWh'] as const;
      const isWorse = ({ results: a }: RunRow, { results: b }: RunRow) =>
        names.every((name) => b[name] <= a[name]) && names.some((name) => b[name] < a[name]);
      const expected = rows.filter((one) => !rows.some((other) => isWorse(one, other))).map(({ number }) => number);
      const front = frontOf(turned ? rows.toReversed() : rows);
      const found = front.flatMap(({ row: { number }, ties }) => [number, ...ties.map((tie) => tie.number)]);
      expect(found.sort((a, b) => a - b)).toEqual(expected);
    }),
  );
});

test('what costs more and saves a tenth of an hour is joined to what it does not better', () => {
  const front = frontOf([
    row(1, { cost: 900, generatorHours: 60 }),
    row(2, { cost: 1300, generatorHours: 59.9 }),
    row(3, { cost: 1500, generatorHours: 40 }),
    row(4, { cost: 1600, generatorHours: 45 }),
    row(5, { cost: 1500, generatorHours: 40 }),
  ]);
  expect(front.map(({ row: { number }, ties }) => [number, ties.map((tie) => tie.number)])).toEqual([
    [1, [2]],
    [3, [5]],
  ]);
});

test('hours are means over common years where the rows have them, and darkness is no saving', () => {
  const front = frontOf([
    row(1, { cost: 900, generatorHours: 10, generatorHoursMean: 60, darkKWhMean: 0 }),
    row(2, { cost: 1000, generatorHours: 90, generatorHoursMean: 30, darkKWhMean: 0 }),
    row(3, { cost: 800, generatorHours: 0, generatorHoursMean: 0, darkKWhMean: 50 }),
  ]);
  expect(front.map(({ row: { number } }) => number)).toEqual([3, 1, 2]);
});
