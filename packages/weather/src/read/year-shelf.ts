import { createHourColumns, type HourColumns } from './hour-columns.js';
import type { SummerHours } from './mend/clock-mend.js';

/** Where the rows of a file go: all to one year, or each calendar year to its own. */
export interface YearShelf {
  /** The columns for rows of a calendar year. */
  of(calendarYear: number): HourColumns;
  /** The years that rows were met of, in order; one, under the number 0, when the years are not kept apart. */
  years(): Map<number, HourColumns>;
}

/** @param head columns without rows, with all that the head of the file says */
export type StartShelf = (head: HourColumns) => YearShelf;

/** What a reader of rows is told. */
export interface Intake {
  start: StartShelf;
  summer: SummerHours | null;
}

/** One year, whatever calendar years its rows name: typical years join months of several. */
export const oneYear: StartShelf = (head) => ({ of: () => head, years: () => new Map([[0, head]]) });

/** Every calendar year by itself. */
export const yearsApart: StartShelf = (head) => {
  const shelves = new Map<number, HourColumns>();
  return {
    of(calendarYear) {
      const known = shelves.get(calendarYear);
      if (known) return known;
      const made = createHourColumns(`${head.source} ${calendarYear}`, head.kind, [...head.columns.keys()]);
      made.place = head.place;
      made.splitByErbs = head.splitByErbs;
      made.isDaily = head.isDaily;
      made.summer = head.summer;
      made.notices = head.notices.filter(({ code }) => code !== 'typical-year');
      if (head.mended) made.mended = new Uint8Array(head.mended.length);
      shelves.set(calendarYear, made);
      return made;
    },
    years: () => new Map([...shelves].sort(([a], [b]) => a - b)),
  };
};

export const oneStandardYear: Intake = { start: oneYear, summer: null };
