import { daysPerYear, hoursPerYear, monthSpan, OutOfRangeError } from '@wintergap/ground';
import type { RandomStream } from '../make/random.js';
import { restoreSum } from '../make/restore.js';
import { followGlobal, type IrradianceYear, type SunTransfer } from './sun.js';

/** Spread between years and between months of the same name, as standard deviations of their sunshine. */
export interface Anomaly {
  /** Common to the twelve months of a year; 0 to 0.3. */
  yearSpread: number;
  /** Of each month on its own; 0 to 0.5. */
  monthSpread: number;
}

/**
 * A size for the anomaly that brings years resampled from a single one to a spread of 4 % for the year and of 10 % for a
 * month, as is often met inland in the north. Common practice, no source: where ten or more real years of the place can
 * be had, use those and no anomaly.
 */
export const usualAnomaly: Readonly<Anomaly> = { yearSpread: 0.03, monthSpread: 0.06 };

/**
 * Makes a whole year, and each month in it, brighter or duller by chance. Days are raised or lowered together below the
 * clearest sky, their hours likewise; hours of the source that were brighter than that stay as bright as they were.
 * Diffuse shares are kept.
 *
 * @throws OutOfRangeError for spreads out of range, or when the sun of the place is not known
 */
export function applyAnomaly(
  year: IrradianceYear,
  { ceilingWm2 }: SunTransfer,
  { yearSpread, monthSpread }: Anomaly,
  random: RandomStream,
): void {
  checkSpread('yearSpread', yearSpread, 0.3);
  checkSpread('monthSpread', monthSpread, 0.5);
  if (!ceilingWm2) throw new OutOfRangeError('an anomaly needs latitude, longitude and utcOffsetH of the place');
  const { ghiWm2 } = year;
  const before = ghiWm2.slice();
  // A little above what is there already, so that every hour can stay as it is.
  const ceilings = ceilingWm2.map((ceiling, h) => Math.max(ceiling, ghiWm2[h]! * 1.002));
  const sums = daySums(ghiWm2);
  const dayCeilings = daySums(ceilings).map((most) => most * 0.998);
  const common = yearSpread * limited(random.normal());
  for (let m = 0; m < 12; m++) {
    const factor = 1 + common + monthSpread * limited(random.normal());
    const { fromDay, toDay } = monthSpan(m);
    let sum = 0;
    for (let day = fromDay; day < toDay; day++) sum += sums[day]!;
    restoreSum(sums, dayCeilings, fromDay, toDay, sum * Math.max(0.1, factor));
  }
  for (let day = 0; day < sums.length; day++) restoreSum(ghiWm2, ceilings, day * 24, day * 24 + 24, sums[day]!);
  followGlobal(year, before);
}

/** Rare draws are held at two and a half spreads. */
const limited = (draw: number): number => Math.min(2.5, Math.max(-2.5, draw));

function daySums(hours: Float64Array): Float64Array {
  const days = new Float64Array(daysPerYear);
  for (let h = 0; h < hoursPerYear; h++) days[Math.floor(h / 24)]! += hours[h]!;
  return days;
}

function checkSpread(what: string, spread: number, most: number): void {
  if (!(spread >= 0 && spread <= most)) throw new OutOfRangeError(`${what} must be 0 to ${most}, got ${spread}`);
}
