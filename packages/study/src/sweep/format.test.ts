import { createHash } from 'node:crypto';
import fc from 'fast-check';
import Papa from 'papaparse';
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
  columns: { cost: false, years: null },
};

// To the last bit from the least to the largest number, and such as results are.
const figure = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (value === 0 ? 0 : value)),
  fc.integer({ min: -1e9, max: 1e9 }).map((part) => part / 7000),
);
const results = fc
  .array(figure, { minLength: resultColumns.length, maxLength: resultColumns.length })
  .map((values) => Object.fromEntries(resultColumns.map((name, i) => [name, values[i]])) as SweepResults);
const text = fc.string({ unit: 'grapheme', minLength: 1 }).filter((value) => value.trim() !== '');
const someRow: fc.Arbitrary<SweepRow> = fc.record({
  number: fc.integer({ min: 1, max: 24 }),
  id: fc.constant('97bec79738be8839'),
  values: fc.tuple(text, text),
  results,
  limits: fc.constantFrom([], ['cold-voltage'], ['cold-voltage', 'short-circuit']),
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
    limits: [],
    error: 'bank.capacity: "1 A",\n  no',
  };
  for (const format of ['csv', 'ndjson'] as const) {
    const read = readRow(format, header, rowLine(format, header, row));
    expect(read).toMatchObject({ number: 3, results: null });
    expect((read as SweepRow).error).toContain('bank.capacity: "1 A",');
  }
});

test('days of autonomy without a load are endless in both formats', () => {
  const figures = Object.fromEntries(resultColumns.map((name) => [name, 1])) as SweepResults;
  const results = { ...figures, autonomyDays: Infinity };
  const row = { number: 1, id: 'a', values: ['2', '3'], results, limits: [], error: '' };
  for (const format of ['csv', 'ndjson'] as const) {
    expect(readRow(format, header, rowLine(format, header, row))).toMatchObject({
      results: { autonomyDays: Infinity },
    });
  }
});

test('a torn row is no row, wherever it is torn before its last column', () => {
  fc.assert(
    fc.property(someRow, fc.integer({ min: 0, max: 1000 }), (row, part) => {
      for (const format of ['csv', 'ndjson'] as const) {
        const line = rowLine(format, header, row);
        expect(readRow(format, header, line.slice(0, Math.floor((part / 1000) * (line.length - 1))))).toBeNull();
      }
    }),
  );
});

const written = (values: unknown[]): SweepRow => {
  const figures = Object.fromEntries(resultColumns.map((name) => [name, 30.5])) as SweepResults;
  return { number: 1, id: 'a', values, results: figures, limits: [], error: '' };
};

// OWASP, "CSV Injection": cells that begin with = + - @, a tab or a carriage return.
test('a text that a spreadsheet would calculate is kept from it, and reads back as it was', () => {
  for (const text of ['=1+2', '+1', '-2 %', '@SUM(A1)', "'=1+2", "'quoted"]) {
    const line = rowLine('csv', header, written([text, '=HYPERLINK("x")']));
    for (const cell of Papa.parse<string[]>(line).data[0]!.slice(2, 4)) expect(cell).toMatch(/^'/);
    expect(readRow('csv', header, line)).toMatchObject({ values: [text, '=HYPERLINK("x")'] });
  }
  expect(rowLine('csv', header, written([-5, 'x']))).toMatch(/^1,a,-5,x,/);
});

test('a figure altered by one digit is known, in either format', () => {
  for (const format of ['csv', 'ndjson'] as const) {
    const line = rowLine(format, header, written(['2', '3']));
    expect(readRow(format, header, line.replace('30.5', '30.4'))).toBe('altered');
    expect(readRow(format, header, line)).toEqual(written(['2', '3']));
  }
});

test('means and cost have columns where the sweep has them, and only there', () => {
  const columns = { cost: true, years: { count: 4, seed: 2 } };
  const more = {
    cost: 1234.5,
    generatorHoursMean: 31.25,
    generatorHoursError: 2.5,
    fuelLitresMean: 1,
    fuelLitresError: 2,
  };
  const row = written(['2', '3']);
  const results = { ...row.results!, ...more, darkKWhMean: 0, darkKWhError: 0 };
  for (const format of ['csv', 'ndjson'] as const) {
    expect(headLines(format, header).join()).not.toContain('generatorHoursMean');
    const wide = { ...header, columns };
    expect(readRow(format, wide, rowLine(format, wide, { ...row, results }))).toEqual({ ...row, results });
    expect(readHeader(headLines(format, wide)[0]!)).toEqual(wide);
  }
  expect(headLines('csv', { ...header, columns })[1]).toContain(',cost,generatorHoursMean,generatorHoursError,');
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

test('a line that has a check sum and is no object is no row', () => {
  const broken = '{"number":1,oops}';
  const sum = createHash('sha256').update(broken).digest('hex').slice(0, 8);
  expect(readRow('ndjson', header, `{"number":1,oops,"check":"${sum}"}`)).toBeNull();
});

/** The row of an object, with the check sum that belongs to it. */
function lineOf(object: object): string {
  const body = JSON.stringify(object);
  const sum = createHash('sha256').update(body).digest('hex').slice(0, 8);
  return `${body.slice(0, -1)},"check":"${sum}"}`;
}

test('an object whose number, id, error or limits are of another kind is no row', () => {
  const good = JSON.parse(rowLine('ndjson', header, written(['2', '3']))) as Record<string, unknown>;
  const { check, ...body } = good;
  expect(readRow('ndjson', header, lineOf(body))).toEqual(written(['2', '3']));
  for (const wrong of [
    { number: '1' },
    { number: 0 },
    { number: 1.5 },
    { id: 7 },
    { error: 5 },
    { limits: 'none' },
    { starts: 'x' },
  ]) {
    expect(readRow('ndjson', header, lineOf({ ...body, ...wrong })), JSON.stringify(wrong)).toBeNull();
  }
});

test('a row of figures with one missing, and one that says an error beside figures, are none', () => {
  const [cells] = Papa.parse<string[]>(rowLine('csv', header, written(['2', '3']))).data;
  const line = (changed: string[]) => {
    const body = Papa.unparse([changed.slice(0, -1)]);
    return `${body},${createHash('sha256').update(body).digest('hex').slice(0, 8)}`;
  };
  expect(readRow('csv', header, line(cells!))).toEqual(written(['2', '3']));
  expect(readRow('csv', header, line(cells!.toSpliced(5, 1, '')))).toBeNull();
  expect(readRow('csv', header, line(cells!.toSpliced(-2, 1, 'no bank')))).toBeNull();
  expect(readRow('csv', header, line(cells!.toSpliced(5, 1)))).toBeNull();
  expect(readRow('csv', header, line(cells!.toSpliced(0, 1, '0')))).toBeNull();
});
