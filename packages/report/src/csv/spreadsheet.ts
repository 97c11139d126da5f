import Papa from 'papaparse';

/** A column of a table for a spreadsheet: its heading with its unit, and what a row has there; `null` for nothing. */
export interface Column<Row> {
  head: string;
  of: (row: Row) => number | string | null;
}

/**
 * Rows as CSV for a spreadsheet. Numbers are written in full with a decimal point; texts that a spreadsheet would
 * calculate have an apostrophe before them.
 */
export function spreadsheet<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const cells = rows.map((row) => columns.map(({ of }) => of(row) ?? ''));
  const heads = columns.map(({ head }) => head);
  // Negative numbers are no formulas.
  return `${Papa.unparse([heads, ...cells], { escapeFormulae: /^[=+@\t\r]|^-(?![\d.])/, newline: '\n' })}\n`;
}
