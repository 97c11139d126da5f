import type { TiltPeriod } from './mount.js';

export const daysPerYear = 365;

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

/** Whether a day lies in a range of days, both ends included, across New Year where `toDay` is the smaller. */
export function dayIsWithin(day: number, fromDay: number, toDay: number): boolean {
  return fromDay <= toDay ? day >= fromDay && day <= toDay : day >= fromDay || day <= toDay;
}
