import type { PartColumns } from './part-table.js';

/** Keys of `when` that a table of appliances may have as columns. */
const whenKeys = ['hours', 'days', 'season', 'outdoorBelow', 'fullAt', 'dark'] as const;
const ownKeys = ['name', 'power', 'count', 'bus', 'runs', 'perDay', 'standby', 'surge'] as const;

/** The columns of a table of appliances, and how its cells become what a site file would have. */
export const applianceColumns: PartColumns = {
  keys: [...ownKeys, ...whenKeys],
  bare: ['count'],
  write(key, cell) {
    if (key === 'bus') return cell.toLowerCase();
    if (key === 'hours') return spans(cell).map((span) => span.map(hour));
    if (key === 'season') return spans(cell).map(([from, to]) => ({ from, to }));
    if (key === 'dark') return /^(yes|true|x|1)$/i.test(cell) ? true : cell;
    return cell;
  },
  gather(values) {
    const when = Object.fromEntries(whenKeys.filter((key) => key in values).map((key) => [key, values[key]]));
    const own = Object.fromEntries(ownKeys.filter((key) => key in values).map((key) => [key, values[key]]));
    return Object.keys(when).length > 0 ? { ...own, when } : own;
  },
};

/** `6-8, 16-23` and `10-15 to 04-15`: windows, one or several. */
const spans = (cell: string): string[][] =>
  cell
    .replace(/^\[+|\]+$/g, '')
    .split(/\s*[;,/]\s*/)
    .map((span) => span.split(/\s+to\s+|(?<=^\d{1,2})\s*-\s*(?=\d{1,2}$)/));

/** An hour of day as a number, or as it is written, for the schema to tell. */
const hour = (written: string): unknown => (/^\d+(\.\d+)?$/.test(written.trim()) ? Number(written) : written);
