import { daysPerYear, hoursPerYear, mustLie, OutOfRangeError } from '@wintergap/ground';
import type { Bus } from './appliance.js';
import { checkSpans, type DaySpan, isWithinSpans } from './schedule.js';

/** Something out of the ordinary: a party, a construction week, laundry after a journey. */
export interface LoadEvent {
  name: string;
  /** Day of the year, 0 for 1 January, or the first day of the dullest spell: the hardest moment for it. */
  day: number | 'dullest-spell';
  /** Hour of day at which it begins, 19.5 for half past seven. */
  startHour: number;
  /** How long it lasts. */
  hours: number;
  /** Power, or the energy of one occurrence spread evenly over it. */
  uses: { powerW: number } | { energyWh: number };
  bus: Bus;
  /** Days on which it is left out, as far as it falls on them. */
  off?: readonly DaySpan[];
  /** On how many days in a row it happens, 1 unless given. */
  daysInRow?: number;
}

/**
 * Adds an event to an hourly load, W; what runs past 31 December goes on at 1 January.
 *
 * @param dullSpellDay first day of the dullest spell, for events placed there
 */
export function addEvent(loadW: Float64Array, event: LoadEvent, dullSpellDay: number | undefined): void {
  const { name, startHour, hours, uses, daysInRow = 1, off = [] } = event;
  checkSpans(name, off);
  mustLie(`${name}: startHour`, startHour, 0, 24);
  mustLie(`${name}: hours`, hours, 1 / 60, hoursPerYear);
  mustLie(`${name}: daysInRow`, daysInRow, 1, daysPerYear);
  if ('powerW' in uses) mustLie(`${name}: powerW`, uses.powerW, 0, 1e9);
  else mustLie(`${name}: energyWh`, uses.energyWh, 0, 1e12);
  const firstDay = event.day === 'dullest-spell' ? dullSpellDay : event.day;
  if (firstDay === undefined) throw new TypeError(`${name}: placed in the dullest spell, but no such day is given`);
  mustLie(`${name}: day`, firstDay, 0, daysPerYear - 1);
  if (!Number.isInteger(firstDay) || !Number.isInteger(daysInRow)) {
    throw new OutOfRangeError(`${name}: day and daysInRow must be whole, got ${firstDay} and ${daysInRow}`);
  }
  const powerW = 'powerW' in uses ? uses.powerW : uses.energyWh / hours;
  for (let day = firstDay; day < firstDay + daysInRow; day++) {
    const start = day * 24 + startHour;
    const end = start + hours;
    for (let h = Math.floor(start); h < end; h++) {
      if (off.length > 0 && isWithinSpans(Math.floor((h % hoursPerYear) / 24), off)) continue;
      loadW[h % hoursPerYear]! += powerW * (Math.min(h + 1, end) - Math.max(h, start));
    }
  }
}
