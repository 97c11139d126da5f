import type { Summary } from './summary.js';

/** The summary as `--json` prints it. */
export type Contract = Omit<Summary, 'array'> & {
  array: Omit<Summary['array'], 'clippedKWh' | 'months'> & {
    months: Omit<Summary['array']['months'][number], 'clippedKWh'>[];
  };
};

/**
 * The summary in the form that programs rely on: there, `available` is what the controllers can give within their
 * current limits, so that available = used + throttled. What is above the limits is in the ledger and in the losses.
 */
export function contractOf(summary: Summary): Contract {
  return { ...summary, array: { ...withinLimit(summary.array), months: summary.array.months.map(withinLimit) } };
}

function withinLimit<Part extends { availableKWh: number; clippedKWh: number }>({ clippedKWh, ...part }: Part) {
  return { ...part, availableKWh: part.availableKWh - clippedKWh };
}
