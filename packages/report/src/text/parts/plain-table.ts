import Table from 'cli-table3';

const bare = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
};

/**
 * A table without rules: a head, rows, figures right-aligned. The first column is left-aligned.
 * Columns are as wide as their widest cell and `gap` spaces apart; the caller keeps them few enough for 80 characters.
 */
export function plainTable(head: readonly string[], rows: readonly (readonly string[])[], gap = 2): string {
  const table = new Table({
    chars: { ...bare, middle: ' '.repeat(gap) },
    style: { 'padding-left': 0, 'padding-right': 0, head: [], border: [], compact: true },
    colAligns: head.map((_, column) => (column === 0 ? 'left' : 'right')),
  });
  table.push([...head], ...rows.map((row) => [...row]));
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .filter((line) => line !== '')
    .join('\n');
}
