import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatOfName, headLines, readRow, rowLine } from './format.js';
import { readHeader, type SweepHeader } from './header.js';
import { resultColumns, type SweepResults, type SweepRow } from './row.js';

const header: SweepHeader = {
  site: 'Otter Bend, "the mill"',
  fingerprint: '0123456789abcdef0123456789abcdef',
  order: { gridSize: 24, sample: { count: 5, seed: 2 } },
  part: { index: 2, of: 3 },
  axes: ['arrays.garden pole, east.strings', 'bank.capacity'],
};

const figure = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (value === 0 ? 0 : value));
const results = fc
  .array(figure, { minLength: resultColumns.length, maxLength: resultColumns.length })
  .map((values) => Object.fromEntries(resultColumns.map((name, i) => [name, values[i]])) as SweepResults);
const text = fc.string({ unit: 'grapheme', minLength: 1 }).filter((value) => value.trim() !== '');
const someRow: fc.Arbitrary<SweepRow> = fc.record({
  number: fc.integer({ min: 1, max: 24 }),
  id: fc.constant('97bec79738be8839'),
  values: fc.tuple(text, text),
  results,
  error: fc.constant(''),
});

test('a row reads back as it was written, every figure to the last bit', () => {
  for (const format of ['csv', 'ndjson'] as const) {
    fc.assert(
      fc.property(someRow, (row) => {
        const line = rowLine(format, header, row);
        expect(line).not.toMatch(/[\n\r\u2028\u2029]/);
        expect(readRow(format, header, line)).toEqual(row);
      }),
    );
  }
});

test('the error of a design reads back, on one line', () => {
  const row: SweepRow = {
    number: 3,
    id: 'a',
    values: ['2', '1 A'],
    results: null,
    error: 'bank.capacity: "1 A",\n  no',
  };
  for (const format of ['csv', 'ndjson'] as const) {
    const read = readRow(format, header, rowLine(format, header, row));
    expect(read).toMatchObject({ number: 3, results: null });
    expect(read?.error).toContain('bank.capacity: "1 A",');
  }
});

test('days of autonomy without a load are endless in both formats', () => {
  const figures = Object.fromEntries(resultColumns.map((name) => [name, 1])) as SweepResults;
  const row = { number: 1, id: 'a', values: ['2', '3'], results: { ...figures, autonomyDays: Infinity }, error: '' };
  for (const format of ['csv', 'ndjson'] as const) {
    expect(readRow(format, header, rowLine(format, header, row))?.results?.autonomyDays).toBe(Infinity);
  }
});

test('a torn row is no row, wherever it is torn before its last column', () => {
  fc.assert(
    fc.property(someRow, fc.double({ min: 0, max: 1, noNaN: true }), (row, share) => {
      for (const format of ['csv', 'ndjson'] as const) {
        const line = rowLine(format, header, row);
        expect(readRow(format, header, line.slice(0, Math.floor(share * (line.length - 1))))).toBeNull();
      }
    }),
  );
});

test('the first line says which sweep a file is of', () => {
  expect(headLines('csv', header)[0]).toMatch(/^# \{"sweep":"0123/);
  for (const format of ['csv', 'ndjson'] as const) expect(readHeader(headLines(format, header)[0]!)).toEqual(header);
  for (const line of [
    '',
    'number,id',
    '{}',
    '# {"sweep":"12"}',
    headLines('ndjson', header)[0]!.replace('2/3', '4/3'),
  ]) {
    expect(readHeader(line)).toBeNull();
  }
});

test('the name of a file chooses its format', () => {
  expect(['a.csv', 'b.CSV', 'c.ndjson', 'd.json', 'csv'].map(formatOfName)).toEqual([
    'csv',
    'csv',
    'ndjson',
    null,
    null,
  ]);
});
