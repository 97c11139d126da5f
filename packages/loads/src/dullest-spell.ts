import { daysPerYear, hoursPerYear, mustHold, mustLie, OutOfRangeError } from '@wintergap/ground';

export interface DullestSpell {
  /** First day of the spell, 0 for 1 January. */
  firstDay: number;
  /** Its first hour of the year. */
  firstHour: number;
  /** Mean sun on a day of it, Wh/m2. */
  whM2PerDay: number;
}

/**
 * The run of `days` days with the least sun in the year; the first of them if several are equal. It may run over the
 * end of the year.
 *
 * @param ghiWm2 hourly irradiance, on the flat or on the array's plane
 */
export function dullestSpell(ghiWm2: Float64Array, days: number): DullestSpell {
  mustHold('ghiWm2', ghiWm2, hoursPerYear, 0, 2000);
  mustLie('days', days, 1, daysPerYear);
  if (!Number.isInteger(days)) throw new OutOfRangeError(`days must be whole, got ${days}`);
  const daily = new Float64Array(daysPerYear);
  for (let h = 0; h < hoursPerYear; h++) daily[Math.floor(h / 24)]! += ghiWm2[h]!;
  let firstDay = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let first = 0; first < daysPerYear; first++) {
    let sum = 0;
    for (let day = first; day < first + days; day++) sum += daily[day % daysPerYear]!;
    if (sum < least) {
      least = sum;
      firstDay = first;
    }
  }
  return { firstDay, firstHour: firstDay * 24, whM2PerDay: least / days };
}
