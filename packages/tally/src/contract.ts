import type { Summary } from './summary.js';

type Contracted<Part> = Omit<Part, 'clippedKWh'>;

/** The summary as `--json` prints it. */
export type Contract = Omit<Summary, 'array' | 'darkSeason'> & {
  array: Contracted<Omit<Summary['array'], 'months'>> & { months: Contracted<Summary['array']['months'][number]>[] };
};

/** The part of the summary that programs rely on: names that stay, and the same figures as on every page. */
export function contractOf({ darkSeason, ...summary }: Summary): Contract {
  return { ...summary, array: { ...contracted(summary.array), months: summary.array.months.map(contracted) } };
}

function contracted<Part extends { clippedKWh: number }>({ clippedKWh, ...part }: Part): Contracted<Part> {
  return part;
}
