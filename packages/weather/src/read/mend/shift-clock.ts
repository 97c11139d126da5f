import { dateInWords, hoursPerYear } from '@wintergap/ground';
import { pointsPerHour, type SunYear } from '@wintergap/irradiance';
import type { HourColumns } from '../hour-columns.js';
import type { ClockMend } from './clock-mend.js';

/**
 * Moves the columns of a year by the hours its clock is wrong, the year taken as a ring. What falls between hours is
 * divided: global and diffuse irradiance by the light above the air in each part, beam by the time the sun is up, all
 * else by time. Sums are kept.
 *
 * @param sun of the place; without one irradiance is divided by time as well
 */
export function shiftClock(hours: HourColumns, { shiftH, summerTime }: ClockMend, sun: SunYear | null): void {
  if (summerTime) {
    const text = `the clock of the file was taken as an hour ahead from ${dateInWords(summerTime.from)} to ${dateInWords(summerTime.to)}`;
    hours.notices.push({ code: 'clock-mended', level: 'note', text });
  }
  if (shiftH === 0) return;
  const whole = Math.floor(shiftH);
  const part = shiftH - whole;
  const lines = hours.lineOfHour;
  hours.lineOfHour = Int32Array.from(lines, (_, h) => lines[ring(h - whole, hoursPerYear)]!);
  const light = sun && part > 0 ? cumulated(sun.cosZenith) : null;
  const up = sun && part > 0 ? cumulated(sun.cosZenith.map((cos) => (cos > 0 ? 1 : 0))) : null;
  for (const [name, values] of hours.columns) {
    const weights = name === 'ghi' || name === 'dhi' ? light : name === 'dni' ? up : null;
    hours.columns.set(name, shifted(values, whole, part, weights));
  }
  hours.notices.push({
    code: 'clock-mended',
    level: 'note',
    text: `the times of the file were moved by ${Math.round(shiftH * 60)} min`,
  });
}

function shifted(values: Float64Array, whole: number, part: number, weights: Float64Array | null): Float64Array {
  const moved = new Float64Array(hoursPerYear);
  for (let source = 0; source < hoursPerYear; source++) {
    const first = ring(source + whole, hoursPerYear);
    const value = values[source]!;
    if (part === 0) {
      moved[first] = value;
      continue;
    }
    // The hour begins `part` into `first` and ends as much into the next.
    const early = weights ? earlyShare(weights, first, part) : 1 - part;
    moved[first]! += value * early;
    moved[(first + 1) % hoursPerYear]! += value * (1 - early);
  }
  return moved;
}

/** Share of what the hour from `first + part` holds that falls before the next full hour. */
function earlyShare(cumulative: Float64Array, first: number, part: number): number {
  const from = at(cumulative, first + part);
  const middle = at(cumulative, first + 1);
  const to = at(cumulative, first + 1 + part);
  return to > from ? (middle - from) / (to - from) : 1 - part;
}

/** Sums up to each point of the year, and on into the next by an hour. */
function cumulated(points: Float64Array): Float64Array {
  const sums = new Float64Array(points.length + 2 * pointsPerHour + 1);
  for (let i = 1; i < sums.length; i++) sums[i] = sums[i - 1]! + points[(i - 1) % points.length]!;
  return sums;
}

function at(cumulative: Float64Array, hour: number): number {
  const point = hour * pointsPerHour;
  const below = Math.floor(point);
  return cumulative[below]! + (point - below) * (cumulative[below + 1]! - cumulative[below]!);
}

const ring = (index: number, length: number): number => ((index % length) + length) % length;
