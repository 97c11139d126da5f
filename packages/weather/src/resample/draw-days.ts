import { daysPerYear } from '@wintergap/ground';
import type { RandomStream } from '../make/random.js';

/** Which day of which source year each day of a new year is taken from. */
export interface DrawnDays {
  fromYear: Uint16Array;
  fromDay: Uint16Array;
}

/** Where blocks of days come from. */
export interface BlockWindow {
  /** Source years. */
  years: number;
  blockDays: number;
  /** How far from its own date a block may come, days either way. */
  windowDays: number;
}

/** Draws a year of blocks. The first is cut at random, so that blocks do not begin on the same dates every year. */
export function drawDays({ years, blockDays, windowDays }: BlockWindow, random: RandomStream): DrawnDays {
  const fromYear = new Uint16Array(daysPerYear);
  const fromDay = new Uint16Array(daysPerYear);
  let end = 0;
  let year = 0;
  let shift = 0;
  for (let day = 0; day < daysPerYear; day++) {
    if (day === end) {
      end += day === 0 ? 1 + random.below(blockDays) : blockDays;
      year = random.below(years);
      shift = random.below(2 * windowDays + 1) - windowDays;
    }
    fromYear[day] = year;
    fromDay[day] = (day + shift + daysPerYear) % daysPerYear;
  }
  return { fromYear, fromDay };
}
