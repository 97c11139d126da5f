import type { HourColumns } from '../hour-columns.js';

// What loggers and services write for "nothing measured", besides the codes that a file form documents: common practice,
// no source. No column can have these values: albedo and depth are never negative, air never below -90 degC.
const placeholders = new Set([-99, -99.9, -99.99, -999, -999.9, -999.99, -9900, -9999, -9999.9, -99_999]);

/** Whether a number as written stands for a missing value; it is then counted, and the hour left as a gap. */
export function isPlaceholder(value: number, into: HourColumns): boolean {
  if (value > -99 || !placeholders.has(value)) return false;
  into.placeholders.set(value, (into.placeholders.get(value) ?? 0) + 1);
  return true;
}

/** Says which placeholders were found. */
export function notePlaceholders(hours: HourColumns): void {
  if (hours.placeholders.size === 0) return;
  const found = [...hours.placeholders].map(([value, count]) => `${count} values are ${value}`);
  hours.notices.push({
    code: 'placeholders',
    level: 'note',
    text: `${found.join(', ')}: taken as missing`,
    rows: [...hours.placeholders.values()].reduce((sum, count) => sum + count, 0),
  });
}
