import { dateInWords, dayOfDate } from '@wintergap/ground';

// How figures are written for people: few digits, units beside them.

/** `0`, `3.4`, `63`, `1 204`: about three digits, thousands apart. */
export function figure(value: number, digits?: number): string {
  if (!Number.isFinite(value)) return 'none';
  const places = digits ?? (Math.abs(value) < 9.95 && Math.abs(value) > 0.0499 ? 1 : 0);
  const fixed = value.toFixed(places);
  const tidy = Number(fixed) === 0 ? fixed.replace('-', '') : fixed;
  const [whole = '', fractional] = tidy.split('.');
  const grouped = whole.replace('-', '').length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ' ') : whole;
  return fractional === undefined ? grouped : `${grouped}.${fractional}`;
}

/** `31 %` of a share. */
export const percent = (share: number, digits = 0) => `${(share * 100).toFixed(digits)} %`;

/** `1 start`, `14 starts`. */
export const count = (n: number, one: string, many = `${one}s`) =>
  `${figure(n, 0)} ${Math.round(n) === 1 ? one : many}`;

/** `2 April` of an `MM-DD` date. */
export const dateText = (date: string): string => dateInWords(dayOfDate(date) ?? 0);

/** Breaks a text into lines of at most `width` characters; later lines are indented. */
export function wrap(text: string, width = 80, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.join('\n');
}
