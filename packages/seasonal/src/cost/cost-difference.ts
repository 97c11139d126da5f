import type { DesignCost, UnpricedThing } from './design-cost.js';

/** What a difference of the costs of two designs leaves out: names of things without a price that the two do not share. */
export interface UnlikeThings {
  /** Of the design, and not of the base. */
  here: string[];
  /** Of the base, and not of the design. */
  there: string[];
}

/**
 * Things without a price cancel in a difference where both designs have the same; any other decides with.
 *
 * A difference of `known` costs is a whole answer only where both lists are empty.
 */
export function unlikeThings(design: DesignCost, base: DesignCost): UnlikeThings {
  const beyond = (some: readonly UnpricedThing[], others: readonly UnpricedThing[]) =>
    some
      .filter(({ name, thing }) => !others.some((other) => other.name === name && other.thing === thing))
      .map(({ name }) => name);
  return { here: beyond(design.unpriced, base.unpriced), there: beyond(base.unpriced, design.unpriced) };
}

/** Mean of the costs of one design in several years of use; what does not hang on its use is that of the first. */
export function meanCost(costs: readonly DesignCost[]): DesignCost {
  const first = costs[0]!;
  const mean = (of: (cost: DesignCost) => number) => costs.reduce((sum, cost) => sum + of(cost), 0) / costs.length;
  const meanOf = (key: 'lifeCycle' | 'known') =>
    first[key] && {
      total: mean((cost) => cost[key]!.total),
      firstCost: first[key].firstCost,
      yearly: mean((cost) => cost[key]!.yearly),
      replacements: mean((cost) => cost[key]!.replacements),
      salvage: mean((cost) => cost[key]!.salvage),
    };
  return {
    ...first,
    runningPerYear: first.runningPerYear === null ? null : mean(({ runningPerYear }) => runningPerYear!),
    lifeCycle: meanOf('lifeCycle'),
    perYear: first.perYear === null ? null : mean(({ perYear }) => perYear!),
    known: meanOf('known'),
  };
}
