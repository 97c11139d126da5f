import { figure } from '../../words/figures.js';

const plotWidth = 60;
const plotHeight = 10;

/**
 * Values in rising order as columns of plain characters, within 80 columns. The axis marks the middle value and the one
 * that nine in ten do not pass.
 *
 * @param values at least one, none negative
 */
export function rankPlot(values: readonly number[]): string {
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  const columns = Math.min(plotWidth, n);
  const wide = Math.max(1, Math.floor(plotWidth / columns));
  const most = sorted[n - 1]! || 1;
  // A column stands for several years when there are more than columns: it shows the worst of them.
  const heights = Array.from({ length: columns }, (_, c) => sorted[Math.ceil(((c + 1) * n) / columns) - 1]! / most);
  const label = (share: number) => figure(most * share).padStart(8);
  const rows: string[] = [];
  for (let line = plotHeight; line >= 1; line--) {
    const bars = heights.map((height) => (height * plotHeight >= line - 0.5 ? '#' : ' ').repeat(wide)).join('');
    const side = line === plotHeight ? label(1) : line === plotHeight / 2 ? label(0.5) : ' '.repeat(8);
    rows.push(`${side} |${bars}`.trimEnd());
  }
  const total = columns * wide;
  const axis = `${label(0)} +${'-'.repeat(total)}`;
  return [...rows, axis, marksBelow(total)].join('\n');
}

/** Names under the axis where the usual and the one-in-ten year stand. */
function marksBelow(total: number): string {
  const marks = [
    { at: Math.round(total * 0.5), text: 'usual' },
    { at: Math.round(total * 0.9), text: 'one in ten' },
  ];
  let line = ' '.repeat(10);
  for (const { at, text } of marks) {
    const from = 10 + at - 1;
    if (from <= line.length - 1) continue;
    line = `${line.padEnd(from)}^ ${text}`;
  }
  return line;
}
