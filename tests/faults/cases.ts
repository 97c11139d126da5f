/** A source of chance that gives the same cases for the same seed. Source: Marsaglia (2003), Xorshift RNGs, J. Stat. Softw. 8(14). */
export function chance(seed: number): (below: number) => number {
  let state = (seed * 2_654_435_761 + 1) >>> 0 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state % below;
  };
}

/** What stands where a value should: extremes, other types, other units, and what breaks readers of text. */
// biome-ignore format: one glance shows them all
const odd: readonly string[] = [
  '0', '-0', '-1', '1e308', '1e-308', '-1e12', '.inf', '.nan', '0x10', '1_000', '1,5', 'true', 'null', '~', '""', '[]', '{}',
  '[[]]', '*a', '&a', '"\\e[2J"', '"\\0"', '__proto__', 'constructor', '!!binary aGk=', '!!float x', '2023-02-30', '02-30',
  '12-31', '25:00', '1 W', '-5 m', '300 degC', '0 K', '101 %', '1000 constructor', '5 kVA', '#8', '’', '日', '\ud800', 'dullest spell',
];

type Change = (lines: string[], pick: (below: number) => number) => void;

const changes: readonly Change[] = [
  (lines, pick) => void lines.splice(pick(lines.length), 1),
  (lines, pick) => {
    const at = pick(lines.length);
    lines.splice(at, 0, lines[pick(lines.length)]!);
  },
  (lines, pick) => {
    const at = pick(lines.length);
    lines[at] = lines[at]!.slice(0, pick(lines[at]!.length + 1));
  },
  (lines, pick) => void lines.splice(1 + pick(lines.length)),
  (lines, pick) => {
    const at = pick(lines.length);
    lines[at] = `${' '.repeat(pick(9))}${lines[at]!.trimStart()}`;
  },
  replaceValue,
  replaceValue,
  replaceValue,
  scaleNumber,
  scaleNumber,
  scaleNumber,
];

/** One value, in braces, list or row, becomes something odd. */
function replaceValue(lines: string[], pick: (below: number) => number): void {
  const at = pick(lines.length);
  const values = [...lines[at]!.matchAll(/(?<=[:,[]\s*)[^\s:,[\]{}][^:,[\]{}]*/g)];
  if (values.length === 0) return;
  const { index, 0: value } = values[pick(values.length)]!;
  lines[at] = lines[at]!.slice(0, index) + odd[pick(odd.length)]! + lines[at]!.slice(index + value.length);
}

/** One number becomes larger or smaller by up to six orders: often still allowed, seldom sensible. */
function scaleNumber(lines: string[], pick: (below: number) => number): void {
  const at = pick(lines.length);
  const numbers = [...lines[at]!.matchAll(/(?<![\w.-])\d+(\.\d+)?/g)];
  if (numbers.length === 0) return;
  const { index, 0: number } = numbers[pick(numbers.length)]!;
  const scaled = String(Number(number) * 10 ** (pick(13) - 6));
  lines[at] = lines[at]!.slice(0, index) + scaled + lines[at]!.slice(index + number.length);
}

/** The text with one to three things done to it. */
export function damaged(text: string, pick: (below: number) => number): string {
  const lines = text.split('\n');
  for (let left = 1 + pick(3); left > 0 && lines.length > 0; left--) changes[pick(changes.length)]!(lines, pick);
  return lines.join('\n');
}
