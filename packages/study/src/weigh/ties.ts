import { type DesignYears, type Merit, meritDifference, meritOf } from '../common/merit.js';
import type { YearFigures } from '../year-figures.js';

/** A thing weighed, and the place's common years without it. */
export interface Weighed<Thing> {
  thing: Thing;
  yearsWithout: readonly YearFigures[];
}

/**
 * The things, in their order, each with the names of the others that the years do not tell apart from it: their order
 * among each other may be chance. Being told apart is no order of classes: of three neighbours the middle one may be tied
 * with both others while these are told apart.
 */
export function withTies<Thing extends { name: string }>(
  weighed: readonly Weighed<Thing>[],
): (Thing & { tiedWith: string[] })[] {
  const years = weighed.map(({ thing, yearsWithout }): DesignYears => ({ name: thing.name, years: yearsWithout }));
  const merit = meritOf(years);
  return weighed.map(({ thing }, i) => ({
    ...thing,
    tiedWith: years.filter((other, j) => j !== i && isTied(other, years[i]!, merit)).map(({ name }) => name),
  }));
}

const isTied = (one: DesignYears, other: DesignYears, merit: Merit) =>
  meritDifference(one, other, merit).verdict === 'none' && meritDifference(other, one, merit).verdict === 'none';
