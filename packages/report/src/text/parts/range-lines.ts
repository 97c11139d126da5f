import { quantileSorted } from 'simple-statistics';
import { figure } from '../../words/figures.js';

const nameWidth = 18;
const scaleWidth = 58;

/** One line of the picture: a name and its value in each year. */
export interface RangeLine {
  name: string;
  values: readonly number[];
}

/**
 * One line for each design on one scale, plain characters, within 80 columns: dashes from the easiest year to the worst,
 * `|` the usual year (median) and `o` the one that nine in ten do not pass. `8` where the two fall together.
 *
 * @param lines each with at least one value, none negative
 * @param unit of the values, for the scale
 */
export function rangeLines(lines: readonly RangeLine[], unit: string): string {
  const most = Math.max(...lines.flatMap(({ values }) => [...values]));
  const top = roundUp(most);
  const columnOf = (value: number) => Math.round((value / top) * (scaleWidth - 1));
  const rows = lines.map(({ name, values }) => {
    const sorted = [...values].sort((a, b) => a - b);
    const cells = new Array<string>(scaleWidth).fill(' ');
    cells.fill('-', columnOf(sorted[0] ?? 0), columnOf(sorted.at(-1) ?? 0) + 1);
    const usual = columnOf(quantileSorted(sorted, 0.5));
    const bad = columnOf(quantileSorted(sorted, 0.9));
    cells[bad] = 'o';
    cells[usual] = usual === bad ? '8' : '|';
    return `${shortened(name)}  ${cells.join('')}`.trimEnd();
  });
  return [...rows, scaleLine(top, unit), `${' '.repeat(nameWidth + 2)}${legend(lines)}`].join('\n');
}

const legend = (lines: readonly RangeLine[]): string =>
  (lines[0]?.values.length ?? 0) < 2 ? '8 the year' : '| usual year  o one in ten is worse  - easiest to worst';

const shortened = (name: string): string =>
  (name.length > nameWidth ? `${name.slice(0, nameWidth - 1)}.` : name).padEnd(nameWidth);

/** The next round value that is not below the given one, and whose quarters are round too. */
function roundUp(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [1, 1.2, 1.6, 2, 2.4, 3.2, 4, 6, 8, 10].find((factor) => factor * power >= value * (1 - 1e-9)) ?? 10;
  return step * power;
}

function scaleLine(top: number, unit: string): string {
  const marks = [0, 0.25, 0.5, 0.75, 1];
  const cells = new Array<string>(nameWidth + 2 + scaleWidth).fill(' ');
  for (const share of marks) {
    const text = share === 1 ? `${figure(top)} ${unit}` : figure(top * share);
    const middle = nameWidth + 2 + Math.round(share * (scaleWidth - 1));
    const from = Math.min(middle - (share === 0 ? 0 : Math.floor(text.length / 2)), cells.length - text.length);
    for (const [i, character] of [...text].entries()) cells[from + i] = character;
  }
  return cells.join('').trimEnd();
}
