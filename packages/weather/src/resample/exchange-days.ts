import { daysPerYear } from '@wintergap/ground';
import type { RandomStream } from '../make/random.js';
import type { BlockWindow, DrawnDays } from './draw-days.js';

/** Sunshine that a day of a source year brings when moved to a day of the new year, Wh/m2. */
export type MovedDaySum = (year: number, fromDay: number, day: number) => number;

/** A month is as wanted within this share of its sum. */
const nearEnough = 0.01;
/** Exchanges tried for a month; single days alone from the half of them on. */
const mostTries = 400;

/**
 * Brings a month to a wanted sum of sunshine by exchanging runs of its days for others from about the same date, until
 * they fit. Days come whole: each keeps its own hours, beam, diffuse and temperature, so a dull month is one of dull
 * days, not of dimmed ones. Of exchanges drawn by chance those are kept that bring the sum nearer. A month may stay
 * short of a sum that its sources' days cannot make.
 *
 * @param drawn changed in place
 * @param from first day of the month, and `to` the one after its last
 */
export function exchangeDays(
  drawn: DrawnDays,
  { years, blockDays, windowDays }: BlockWindow,
  from: number,
  to: number,
  wantedSum: number,
  sumOf: MovedDaySum,
  random: RandomStream,
): void {
  const { fromYear, fromDay } = drawn;
  let off = -wantedSum;
  for (let day = from; day < to; day++) off += sumOf(fromYear[day]!, fromDay[day]!, day);
  for (let tried = 0; tried < mostTries && Math.abs(off) > nearEnough * wantedSum; tried++) {
    const run = tried < mostTries / 2 ? 1 + random.below(blockDays) : 1;
    const first = from + random.below(to - from);
    const end = Math.min(to, first + run);
    const year = random.below(years);
    const shift = random.below(2 * windowDays + 1) - windowDays;
    let change = 0;
    for (let day = first; day < end; day++) {
      change += sumOf(year, (day + shift + daysPerYear) % daysPerYear, day);
      change -= sumOf(fromYear[day]!, fromDay[day]!, day);
    }
    if (Math.abs(off + change) >= Math.abs(off)) continue;
    off += change;
    for (let day = first; day < end; day++) {
      fromYear[day] = year;
      fromDay[day] = (day + shift + daysPerYear) % daysPerYear;
    }
  }
}
