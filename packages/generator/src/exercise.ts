import { daysPerYear, hoursPerYear, mustLie, OutOfRangeError } from '@wintergap/ground';

export interface Exercise {
  everyDays: number;
  minutes: number;
  /** Whole hour of day at which the run begins, 10 unless given. */
  atHour?: number;
}

/**
 * 1 for each hour in which an exercise run is due, the first at the end of the first interval. Where the engine is
 * not accepted at that hour, the run moves to the next accepted hour; it is left out if none comes within the
 * interval.
 */
export function exerciseMask({ everyDays, minutes, atHour = 10 }: Exercise, accepted: Uint8Array): Uint8Array {
  mustLie('exercise.everyDays', everyDays, 1, daysPerYear);
  mustLie('exercise.minutes', minutes, 1, 600);
  mustLie('exercise.atHour', atHour, 0, 23);
  if (!Number.isInteger(everyDays) || !Number.isInteger(atHour)) {
    throw new OutOfRangeError(
      `exercise must be every whole number of days at a whole hour, got ${everyDays} and ${atHour}`,
    );
  }
  const mask = new Uint8Array(hoursPerYear);
  for (let day = everyDays - 1; day < daysPerYear; day += everyDays) {
    const due = day * 24 + atHour;
    const last = Math.min(due + everyDays * 24, hoursPerYear);
    for (let h = due; h < last; h++) {
      if (accepted[h] !== 1) continue;
      mask[h] = 1;
      break;
    }
  }
  return mask;
}
