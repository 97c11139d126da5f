import type { YearResult } from '@wintergap/year';
import { yearFigures } from '../year-figures.js';
import type { CommonRun } from './common-wish.js';

/** What `runDesigns` finds for one year, that of the site's file or of its means, from results that are there already. */
export function fileYear(designs: readonly { name: string; result: YearResult }[]): CommonRun {
  const made = designs.some(({ result }) => 'months' in result.site.weather);
  return {
    weather: { count: 1, kind: made ? 'made' : 'real', spread: null },
    designs: designs.map(({ name, result }) => ({ name, years: [yearFigures(result)] })),
  };
}
