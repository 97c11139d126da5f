import { LoadTableError } from './load-table-error.js';
/** A stretch of a load table without values. */
export interface LoadGap {
  /** The line with the first empty cell, or the line after which rows are missing; 0 when there is none before. */
  line: number;
  hours: number;
}

/** Longest gap that is filled. */
const longestFilledH = 48;
/** How many days back a value is looked for. */
const daysBack = 7;

/**
 * Finds stretches of NaN and fills each step with the value at the same time of the day before, or of the nearest
 * earlier day that has one; before the first day comes the last. Both columns are changed in place.
 *
 * @param lineOf line of each step's row, 0 where the row is missing
 * @throws LoadTableError for a gap longer than two days, or when no earlier day has a value
 */
export function fillGaps(
  acW: Float64Array,
  dcW: Float64Array,
  lineOf: Int32Array,
  stepMinutes: number,
  source: string,
): LoadGap[] {
  const slots = acW.length;
  const perDay = 1440 / stepMinutes;
  const missing = Uint8Array.from(acW, (value, slot) => (Number.isNaN(value) || Number.isNaN(dcW[slot]!) ? 1 : 0));
  const gaps: LoadGap[] = [];
  for (let slot = 0; slot < slots; slot++) {
    if (missing[slot] === 0) continue;
    let end = slot + 1;
    while (end < slots && missing[end] === 1) end++;
    const line = lineOf[slot]! > 0 ? lineOf[slot]! : slot > 0 ? lineOf[slot - 1]! : 0;
    const hours = ((end - slot) * stepMinutes) / 60;
    const where = line > 0 ? `${source} line ${line}` : `${source}: at the beginning`;
    if (hours > longestFilledH) {
      throw new LoadTableError(`${where}: ${hours} hours without values, at most ${longestFilledH} are filled`);
    }
    for (let k = slot; k < end; k++) {
      const from = dayWithValue(missing, k, perDay);
      if (from < 0)
        throw new LoadTableError(`${where}: ${hours} hours without values and no other day to fill them from`);
      acW[k] = acW[from]!;
      dcW[k] = dcW[from]!;
    }
    gaps.push({ line, hours });
    slot = end;
  }
  return gaps;
}

/** The nearest earlier slot at the same time of day that has a value of its own; -1 when there is none. */
function dayWithValue(missing: Uint8Array, slot: number, perDay: number): number {
  const slots = missing.length;
  for (let days = 1; days <= daysBack && days * perDay < slots; days++) {
    const from = (slot - days * perDay + slots) % slots;
    if (missing[from] === 0) return from;
  }
  return -1;
}
