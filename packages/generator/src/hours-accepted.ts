import { daysPerYear, hoursPerYear, monthOfDay, mustLie, OutOfRangeError } from '@wintergap/ground';

/** When people accept the noise of a running engine. */
export interface HoursAccepted {
  /** Whole hours of day `[from, to]`; `[20, 6]` runs past midnight. All day unless given. */
  hours?: readonly (readonly [from: number, to: number])[];
  /** Months, 1 for January; all unless given. */
  months?: readonly number[];
  /** Weekdays, 0 for Sunday; all unless given. */
  weekdays?: readonly number[];
  /** Whether a run under way ends when these hours do; otherwise they only bar starts. Yes unless given. */
  endsRun?: boolean;
}

/**
 * 1 for each hour of the year in which the engine is accepted, 0 for the others. What runs past midnight belongs to
 * the day on which it began, and past New Year's Eve it goes on at the first of January.
 *
 * @param firstWeekday weekday of 1 January, 0 for Sunday
 */
export function acceptedMask(accepted: HoursAccepted, firstWeekday: number): Uint8Array {
  mustLie('firstWeekday', firstWeekday, 0, 6);
  const { hours = [[0, 24]], months, weekdays } = accepted;
  for (const [from, to] of hours) {
    mustLie('accepted hour', from, 0, 24);
    mustLie('accepted hour', to, 0, 24);
    if (!Number.isInteger(from) || !Number.isInteger(to)) {
      throw new OutOfRangeError(`accepted hours must be whole, got [${from}, ${to}]`);
    }
    if (from === to)
      throw new OutOfRangeError(`accepted hours must differ, got [${from}, ${to}]; a whole day is [0, 24]`);
  }
  for (const month of months ?? []) mustLie('accepted month', month, 1, 12);
  for (const weekday of weekdays ?? []) mustLie('accepted weekday', weekday, 0, 6);
  const mask = new Uint8Array(hoursPerYear);
  for (let day = 0; day < daysPerYear; day++) {
    if (months && !months.includes(1 + monthOfDay(day))) continue;
    if (weekdays && !weekdays.includes((firstWeekday + day) % 7)) continue;
    for (const [from, to] of hours) {
      const end = to > from ? to : to + 24;
      for (let hour = from; hour < end; hour++) mask[(day * 24 + hour) % hoursPerYear] = 1;
    }
  }
  return mask;
}
