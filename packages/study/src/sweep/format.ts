import Papa from 'papaparse';
import { headerText, type SweepHeader } from './header.js';
import { resultColumns, type SweepResults, type SweepRow } from './row.js';

/** CSV with a comment line before the column names, or one JSON object a line. */
export type SweepFormat = 'csv' | 'ndjson';

/** The format that a file's name asks for; `null` for neither. */
export function formatOfName(path: string): SweepFormat | null {
  if (/\.csv$/i.test(path)) return 'csv';
  return /\.ndjson$/i.test(path) ? 'ndjson' : null;
}

/** What stands before the first row, as lines. */
export function headLines(format: SweepFormat, header: SweepHeader): string[] {
  if (format === 'ndjson') return [oneLine(headerText(header))];
  const names = ['number', 'id', ...header.axes, ...resultColumns, 'error'];
  return [`# ${oneLine(headerText(header))}`, oneLine(Papa.unparse([names]))];
}

/** A row as one line, without its end. Numbers are written in full: reading them gives the same number to the last bit. */
export function rowLine(format: SweepFormat, header: SweepHeader, row: SweepRow): string {
  const { number, id, values, results, error } = row;
  if (format === 'ndjson') {
    const axes = Object.fromEntries(header.axes.map((path, a) => [path, values[a]]));
    return oneLine(JSON.stringify({ number, id, ...axes, ...results, ...(error !== '' && { error }) }));
  }
  const figures = resultColumns.map((name) => (results === null ? '' : results[name]));
  return oneLine(Papa.unparse([[number, id, ...values.map(valueText), ...figures, error.replace(/\s*\n\s*/g, '; ')]]));
}

/** Reads a row; `null` when the line is none, as when it is torn. Values from CSV come back as texts. */
export function readRow(format: SweepFormat, header: SweepHeader, line: string): SweepRow | null {
  if (format === 'ndjson') return readObject(header, line);
  const cells = Papa.parse<string[]>(line).data[0] ?? [];
  const firstFigure = 2 + header.axes.length;
  if (cells.length !== firstFigure + resultColumns.length + 1) return null;
  const figures = cells.slice(firstFigure, -1);
  const error = cells[cells.length - 1]!;
  if (error === '' ? figures.includes('') : figures.some((text) => text !== '')) return null;
  return row(
    Number(cells[0]),
    cells[1]!,
    cells.slice(2, firstFigure),
    error === '' ? figures.map(Number) : null,
    error,
  );
}

function readObject(header: SweepHeader, line: string): SweepRow | null {
  let written: Record<string, unknown>;
  try {
    written = JSON.parse(line) as Record<string, unknown>;
  } catch {
    return null;
  }
  const { number, id, error = '' } = written;
  if (typeof number !== 'number' || typeof id !== 'string' || typeof error !== 'string') return null;
  // JSON has no infinity; days of autonomy without a load are the one figure that can be so.
  const figures = resultColumns.map((name) => (written[name] === null ? Infinity : Number(written[name])));
  return row(
    number,
    id,
    header.axes.map((path) => written[path]),
    error === '' ? figures : null,
    error,
  );
}

function row(number: number, id: string, values: unknown[], figures: number[] | null, error: string): SweepRow | null {
  if (!Number.isSafeInteger(number) || number < 1 || figures?.some(Number.isNaN)) return null;
  const results = figures && Object.fromEntries(resultColumns.map((name, i) => [name, figures[i]!]));
  return { number, id, values, results: results as SweepResults | null, error };
}

/** A value of the site file as the text of one cell: mappings and lists as JSON. */
export const valueText = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

/** Some characters end a line for one reader and not for another; here only `\n` between rows may. */
const oneLine = (text: string): string =>
  text.replace(/[\n\r\u2028\u2029]/g, (end) => `\\u${end.charCodeAt(0).toString(16).padStart(4, '0')}`);
