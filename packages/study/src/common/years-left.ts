/**
 * The years of a run that nobody has begun, in memory that all threads read: whoever is free takes the next one, without
 * asking another thread.
 */
export type YearsLeft = SharedArrayBuffer;

/** The number of the next year, and the one after the last. */
const next = 0;
const end = 1;

/** @param from the first year that is to be taken */
export function createYearsLeft(from: number): YearsLeft {
  const left = new SharedArrayBuffer(2 * Int32Array.BYTES_PER_ELEMENT);
  new Int32Array(left).set([from, from]);
  return left;
}

/** Years before `count` are to be run; fewer than were begun already end the run. */
export function leaveYears(left: YearsLeft, count: number): void {
  Atomics.store(new Int32Array(left), end, count);
}

/** Takes the next year; `null` when all are begun. */
export function takeYear(left: YearsLeft): number | null {
  const of = new Int32Array(left);
  for (;;) {
    const year = Atomics.load(of, next);
    if (year >= Atomics.load(of, end)) return null;
    if (Atomics.compareExchange(of, next, year, year + 1) === year) return year;
  }
}
