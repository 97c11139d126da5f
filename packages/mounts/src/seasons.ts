import { daysPerYear } from '@wintergap/ground';
import type { TiltPeriod } from './mount.js';

/** Tilt of each day of the year, from periods in any order. */
export function tiltByDay(tilts: readonly TiltPeriod[]): Float64Array {
  const periods = [...tilts].sort((a, b) => a.fromDay - b.fromDay);
  const byDay = new Float64Array(daysPerYear);
  let tiltDeg = periods[periods.length - 1]!.tiltDeg;
  let next = 0;
  for (let day = 0; day < daysPerYear; day++) {
    if (periods[next]?.fromDay === day) tiltDeg = periods[next++]!.tiltDeg;
    byDay[day] = tiltDeg;
  }
  return byDay;
}
