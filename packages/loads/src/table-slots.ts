import { LoadTableError } from './load-table-error.js';
import type { TableStamp } from './table-stamp.js';

/** The regular grid of times that a load table's rows belong to. */
export interface TimeSlots {
  stepMinutes: number;
  covers: 'year' | 'week' | 'day';
  /** Number of steps in what the table covers. */
  slots: number;
  /** The slot of each row, counted from 1 January, Sunday or midnight; -1 for a 29 February. */
  slotOf: Int32Array;
}

interface StampedRow {
  line: number;
  stamp: TableStamp;
}

const minutesOf = { day: 1440, week: 10_080, year: 525_600 } as const;

/** Minutes after which stamps of a form begin again; dates without a year are counted as in a leap year. */
const repeatsAfter = { day: 1440, week: 10_080, year: 527_040, dated: Number.POSITIVE_INFINITY } as const;

/**
 * Places rows on their grid. Rows run forward in time; those of a typical week or day, or of dates without a year, may
 * pass the end of their period once.
 *
 * @param source for messages
 */
export function timeSlots(rows: readonly StampedRow[], source: string): TimeSlots {
  if (rows.length < 2)
    throw new LoadTableError(`${source}: ${rows.length} rows, expected a day, a week or a year of them`);
  const elapsed = elapsedMinutes(rows, source);
  const stepMinutes = commonStep(elapsed);
  if (1440 % stepMinutes !== 0 || (60 % stepMinutes !== 0 && stepMinutes % 60 !== 0)) {
    throw new LoadTableError(
      `${source}: step of ${stepMinutes} minutes, expected one that divides an hour, or whole hours that divide a day`,
    );
  }
  const covers = periodCovered(rows, elapsed, stepMinutes, source);
  const slotOf = new Int32Array(rows.length);
  for (let r = 0; r < rows.length; r++) {
    const { stamp, line } = rows[r]!;
    const minute = minuteInPeriod(stamp, covers);
    if (minute % stepMinutes !== 0) {
      throw new LoadTableError(`${source} line ${line}: time is not a multiple of the step of ${stepMinutes} minutes`);
    }
    slotOf[r] = covers === 'year' && stamp.isLeapDay ? -1 : minute / stepMinutes;
  }
  return { stepMinutes, covers, slots: minutesOf[covers] / stepMinutes, slotOf };
}

function minuteInPeriod(stamp: TableStamp, covers: 'year' | 'week' | 'day'): number {
  if (covers === 'year') return stamp.minuteOfYear;
  // 1 January 1970 was a Thursday, four days after a Sunday.
  const minute = stamp.form === 'dated' ? stamp.minute + 4 * 1440 : stamp.minute;
  const period = minutesOf[covers];
  return ((minute % period) + period) % period;
}

/** Minutes since the first row. */
function elapsedMinutes(rows: readonly StampedRow[], source: string): Float64Array {
  const elapsed = new Float64Array(rows.length);
  const first = rows[0]!.stamp;
  let passedEnd = 0;
  for (let r = 1; r < rows.length; r++) {
    const { stamp, line } = rows[r]!;
    if (stamp.form !== first.form) {
      throw new LoadTableError(`${source} line ${line}: time is written differently from the first row`);
    }
    if (first.form !== 'dated' && passedEnd === 0 && stamp.minute < rows[r - 1]!.stamp.minute) {
      passedEnd = repeatsAfter[first.form];
    }
    elapsed[r] = stamp.minute + passedEnd - first.minute;
    if (elapsed[r]! <= elapsed[r - 1]!) {
      throw new LoadTableError(`${source} line ${line}: time does not go forward; standard time has no hour twice`);
    }
  }
  return elapsed;
}

/** The most frequent distance between rows; the shorter of two equally frequent ones. */
function commonStep(elapsed: Float64Array): number {
  const counts = new Map<number, number>();
  for (let r = 1; r < elapsed.length; r++) {
    const step = elapsed[r]! - elapsed[r - 1]!;
    counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  let common = 0;
  let most = 0;
  for (const [step, count] of counts) {
    if (count < most || (count === most && step > common)) continue;
    common = step;
    most = count;
  }
  return common;
}

function periodCovered(
  rows: readonly StampedRow[],
  elapsed: Float64Array,
  stepMinutes: number,
  source: string,
): 'year' | 'week' | 'day' {
  const { form } = rows[0]!.stamp;
  if (form !== 'dated') return form;
  const days = (elapsed[rows.length - 1]! + stepMinutes) / 1440;
  if (days <= 1) return 'day';
  if (days > 5 && days <= 7) return 'week';
  if (days > 363 && days <= 366) return 'year';
  throw new LoadTableError(
    `${source}: lines ${rows[0]!.line} to ${rows[rows.length - 1]!.line} cover ${Number(days.toFixed(2))} days, ` +
      'expected one day or seven days to repeat, or a whole year',
  );
}
