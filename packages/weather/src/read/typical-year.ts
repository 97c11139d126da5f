import type { HourColumns } from './hour-columns.js';

/** Says that a year joined from several, or so called, leaves out the bad winters. */
export function noteTypicalYear(hours: HourColumns, years: ReadonlySet<number>, named: boolean): void {
  if (!named && years.size < 2) return;
  const known = [...years].filter((year) => year > 1800);
  const joined = known.length > 1 ? ` joined from months of ${Math.min(...known)} to ${Math.max(...known)}` : '';
  hours.notices.push({
    code: 'typical-year',
    level: 'note',
    text: `a typical year${joined}: its months were chosen to be ordinary, so no bad winter is in it`,
  });
}
