import type { YearFigures } from '../year-figures.js';
import { missesOf, type Targets, targetFigures } from './targets.js';
import { judgedValues } from './trial.js';

/**
 * Of designs that all miss the targets, the one that comes nearest: each miss is taken as a share of the worst miss of
 * that target among the designs, and the shares are added up. The first of several equal ones. Designs are compared
 * on the weather years that all of them were run through.
 */
export function nearestTo<Design extends { years: readonly YearFigures[] }>(
  targets: Targets,
  designs: readonly Design[],
  share: number,
): Design {
  const common = Math.min(...designs.map(({ years }) => years.length));
  const misses = designs.map(({ years }) => missesOf(judgedValues(years.slice(0, common), share), targets));
  const missed = (design: number, figure: string) => misses[design]!.find((miss) => miss.figure === figure)?.by ?? 0;
  const sums = new Float64Array(designs.length);
  for (const figure of targetFigures(targets)) {
    const worst = designs.reduce((most, _, d) => Math.max(most, missed(d, figure)), 0);
    if (worst > 0) for (let d = 0; d < designs.length; d++) sums[d]! += missed(d, figure) / worst;
  }
  return designs[sums.indexOf(Math.min(...sums))]!;
}
