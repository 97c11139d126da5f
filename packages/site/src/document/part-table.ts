import { InputFileError, readInputText } from '@wintergap/ground';
import Papa from 'papaparse';
import { nearestHint } from './nearest-word.js';
import type { SiteProblem } from './site-problem.js';

/** A part as a row of a table has it: its keys as they would be written in a site file, and where they stand. */
export interface PartRow {
  values: Record<string, unknown>;
  /** The table as the site file names it. */
  file: string;
  line: number;
  /** By key, the number of the column, 1 for the first. */
  columns: Record<string, number>;
}

/** What a table of parts may hold. */
export interface PartColumns {
  keys: readonly string[];
  /** Keys whose values are bare numbers. */
  bare: readonly string[];
  /** What becomes of a cell where it is not written as in a site file. */
  write?: (key: string, cell: string) => unknown;
  /** The keys of a row as a site file nests them. */
  gather?: (values: Record<string, unknown>) => Record<string, unknown>;
}

/** Columns for people. */
const forPeople = ['note', 'notes', 'maker', 'source'];

/**
 * Reads a table of parts: CSV with commas, semicolons or tabs, a row for each part and its `name`. Units stand in the cells,
 * `32.5 V`, or in the heading, `vmp [V]`; empty cells leave a key out, and lines that begin with `#` are skipped.
 *
 * @param problems to which everything is added that is wrong with the table
 */
export function readPartTable(path: string, file: string, known: PartColumns, problems: SiteProblem[]): PartRow[] {
  let text: string;
  try {
    text = readInputText(path, 'refused');
  } catch (error) {
    if (!(error instanceof InputFileError)) throw error;
    const message = error.code === 'ENOENT' ? `no such file; it is looked for at ${path}` : error.message;
    problems.push({ file, line: 0, column: 0, path: '', message });
    return [];
  }
  // Comments are emptied rather than removed, so that line numbers stay those of the file.
  const plain = text.replace(/^\uFEFF/, '').replace(/^#.*$/gm, '');
  const header = /\S.*/.exec(plain)?.[0] ?? '';
  const delimiter = header.includes(';') ? ';' : header.includes('\t') ? '\t' : ',';
  const rows = Papa.parse<string[]>(plain, { delimiter }).data.map((cells, i) => ({ cells, line: i + 1 }));
  const [head, ...parts] = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (!head) {
    problems.push({
      file,
      line: 1,
      column: 1,
      path: '',
      message: `empty, expected headings: ${known.keys.join(', ')}`,
    });
    return [];
  }
  const columns = columnsOf(head.cells, head.line, file, known, problems);
  if (!columns) return [];
  const seen = new Map<string, number>();
  return parts.flatMap(({ cells, line }) => {
    const row = partOf(cells, line, file, columns, known);
    const name = String(row.values.name ?? '');
    if (name === '') problems.push({ file, line, column: 1, path: 'name', message: 'found nothing, expected a name' });
    else if (seen.has(name)) {
      const message = `"${name}" is there twice, first on line ${seen.get(name)}; give each its own name`;
      problems.push({ file, line, column: row.columns.name ?? 1, path: 'name', message });
    } else {
      seen.set(name, line);
      return [row];
    }
    return [];
  });
}

interface Column {
  key: string;
  unit: string;
}

function columnsOf(
  heads: readonly string[],
  line: number,
  file: string,
  { keys }: PartColumns,
  problems: SiteProblem[],
): (Column | null)[] | null {
  const plain = (word: string) => word.toLowerCase().replace(/[\s_-]/g, '');
  let isRight = true;
  const complain = (column: number, message: string) => {
    isRight = false;
    problems.push({ file, line, column, path: '', message });
  };
  const columns = heads.map((heading, i): Column | null => {
    const [, words = '', unit = ''] = /^\s*(.*?)\s*(?:[[(]([^\])]*)[\])])?\s*$/.exec(heading)!;
    if (words === '' || forPeople.includes(plain(words))) return null;
    const key = keys.find((known) => plain(known) === plain(words));
    if (key) return { key, unit: unit.trim() };
    complain(
      i + 1,
      `unknown column "${words.slice(0, 60)}"${nearestHint(words, keys) || ';'} Known here: ${keys.join(', ')}`,
    );
    return null;
  });
  const given = columns.map((column) => column?.key);
  if (isRight && !given.includes('name')) complain(1, `no column name, found ${heads.join(', ').slice(0, 100)}`);
  given.forEach((key, i) => {
    if (key !== undefined && given.indexOf(key) < i)
      complain(i + 1, `the column ${key} is there twice; keep one of them`);
  });
  return isRight ? columns : null;
}

function partOf(
  cells: readonly string[],
  line: number,
  file: string,
  columns: readonly (Column | null)[],
  { bare, write, gather }: PartColumns,
): PartRow {
  const row: PartRow = { values: {}, file, line, columns: {} };
  columns.forEach((column, i) => {
    const cell = (cells[i] ?? '').trim();
    if (!column || cell === '') return;
    const { key, unit } = column;
    row.columns[key] = i + 1;
    const isNumber = /^[+-]?[\d.,]+$/.test(cell);
    if (key !== 'name' && isNumber && unit !== '') row.values[key] = `${cell} ${unit}`;
    else if (bare.includes(key) && Number.isFinite(Number(cell))) row.values[key] = Number(cell);
    else row.values[key] = write?.(key, cell) ?? cell;
  });
  return gather ? { ...row, values: gather(row.values) } : row;
}
