import { createHash } from 'node:crypto';
import Papa from 'papaparse';
import { headerText, type SweepHeader } from './header.js';
import { figureColumns, type SweepResults, type SweepRow } from './row.js';

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
  const names = ['number', 'id', ...header.axes, ...figureColumns(header.columns), 'limits', 'error', 'check'];
  return [`# ${oneLine(headerText(header))}`, oneLine(Papa.unparse([names]))];
}

/**
 * A row as one line, without its end. Numbers are written in full: reading them gives the same number to the last bit. A text
 * that a spreadsheet would take for a formula has an apostrophe before it. The last cell is a check sum of the others.
 */
export function rowLine(format: SweepFormat, header: SweepHeader, row: SweepRow): string {
  const { number, id, values, results, limits, error } = row;
  if (format === 'ndjson') {
    const axes = Object.fromEntries(header.axes.map((path, a) => [path, values[a]]));
    const object = {
      number,
      id,
      ...axes,
      ...results,
      ...(limits.length > 0 && { limits }),
      ...(error !== '' && { error }),
    };
    const body = oneLine(JSON.stringify(object));
    return `${body.slice(0, -1)},"check":"${checkSum(body)}"}`;
  }
  const figures = figureColumns(header.columns).map((name) => (results === null ? '' : results[name]));
  const cells = [number, id, ...values.map(cellOf), ...figures, limits.join(' '), error.replace(/\s*\n\s*/g, '; ')];
  const body = oneLine(Papa.unparse([cells], { escapeFormulae: looksLikeFormula }));
  return `${body},${checkSum(body)}`;
}

/** How a spreadsheet knows a formula; the apostrophe that keeps a text from being one must be kept apart from its own. */
const looksLikeFormula = /^['=+\-@\t\r]/;
const textOf = (cell: string): string => (cell.startsWith("'") ? cell.slice(1) : cell);

/** The first digits of SHA-256: enough to tell a figure that was altered. */
const checkSum = (body: string): string => createHash('sha256').update(body).digest('hex').slice(0, 8);

/**
 * Reads a row; `null` when the line is none, as when it is torn, `altered` when its check sum is that of another. Values from
 * CSV come back as texts.
 */
export function readRow(format: SweepFormat, header: SweepHeader, line: string): SweepRow | 'altered' | null {
  if (format === 'ndjson') return readObject(header, line);
  const cells = Papa.parse<string[]>(line).data[0] ?? [];
  const firstFigure = 2 + header.axes.length;
  const columns = figureColumns(header.columns).length;
  if (cells.length !== firstFigure + columns + 3) return null;
  const sum = cells[cells.length - 1]!;
  if (!/^[0-9a-f]{8}$/.test(sum) || !line.endsWith(`,${sum}`)) return null;
  if (checkSum(line.slice(0, -sum.length - 1)) !== sum) return 'altered';
  const figures = cells.slice(firstFigure, -3);
  const [limits, error] = cells.slice(-3, -1).map(textOf) as [string, string];
  if (error === '' ? figures.includes('') : figures.some((text) => text !== '')) return null;
  return row(
    header,
    Number(cells[0]),
    cells[1]!,
    cells.slice(2, firstFigure).map(textOf),
    error === '' ? figures.map(Number) : null,
    limits === '' ? [] : limits.split(' '),
    error,
  );
}

function readObject(header: SweepHeader, line: string): SweepRow | 'altered' | null {
  const end = /,"check":"([0-9a-f]{8})"\}$/.exec(line);
  if (!end) return null;
  if (checkSum(`${line.slice(0, end.index)}}`) !== end[1]) return 'altered';
  let written: Record<string, unknown>;
  try {
    written = JSON.parse(line) as Record<string, unknown>;
  } catch {
    return null;
  }
  const { number, id, error = '', limits = [] } = written;
  if (typeof number !== 'number' || typeof id !== 'string' || typeof error !== 'string') return null;
  if (!Array.isArray(limits)) return null;
  // JSON has no infinity; days of autonomy without a load, and a cost that cannot be told, can be so.
  const figures = figureColumns(header.columns).map((name) =>
    written[name] === null ? Infinity : Number(written[name]),
  );
  return row(
    header,
    number,
    id,
    header.axes.map((path) => written[path]),
    error === '' ? figures : null,
    limits as string[],
    error,
  );
}

function row(
  header: SweepHeader,
  number: number,
  id: string,
  values: unknown[],
  figures: number[] | null,
  limits: readonly string[],
  error: string,
): SweepRow | null {
  if (!Number.isSafeInteger(number) || number < 1 || figures?.some(Number.isNaN)) return null;
  const results = figures && Object.fromEntries(figureColumns(header.columns).map((name, i) => [name, figures[i]!]));
  return { number, id, values, results: results as SweepResults | null, limits, error };
}

/** A number stays one, so that a negative one is no text to be kept from being a formula. */
const cellOf = (value: unknown): string | number => (typeof value === 'number' ? value : valueText(value));

/** A value of the site file as the text of one cell: mappings and lists as JSON. */
export const valueText = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

/** Some characters end a line for one reader and not for another; here only `\n` between rows may. */
const oneLine = (text: string): string =>
  text.replace(/[\n\r\u2028\u2029]/g, (end) => `\\u${end.charCodeAt(0).toString(16).padStart(4, '0')}`);
