import {
  type Costs,
  type DesignCost,
  lifeCycleOfDesign,
  meanCost,
  type UnlikeThings,
  unlikeThings,
} from '@wintergap/seasonal';
import type { Site } from '@wintergap/site';
import { bankFacts, type YearResult } from '@wintergap/year';
import type { CommonAnswer } from '../common/common-answer.js';
import { type PairedDifference, pairedDifference } from '../common/paired-difference.js';

/** What a design costs over the common years, and what it costs more than the base. */
export interface ComparedCost {
  name: string;
  /** Mean over the common years, each taken as every year of the comparison. */
  cost: DesignCost;
  /** `null` for the base, and where nothing can be told. */
  againstBase: CostAgainst | null;
}

/** How the costs of two designs differ, over the same weather years. */
export interface CostAgainst extends UnlikeThings {
  /** Of all that has a price, present value. */
  difference: PairedDifference;
}

/** The engine in one year. */
export interface EngineOfYear {
  hours: number;
  fuelLitres: number;
}

/** Nobody decides on less than a hundredth of what a place costs. */
const smallestShare = 0.01;

/**
 * Costs of designs over their common years; the first is the base.
 *
 * @param designs in the order of the answer, each with the file's year, whose wear says how long a bank lasts
 */
export const comparedCosts = (
  designs: readonly { name: string; result: YearResult }[],
  answer: CommonAnswer,
  costs: Costs,
): ComparedCost[] =>
  costsOfDesigns(
    designs.map(({ name, result }) => ({ name, site: result.site, bankYears: bankFacts(result).wear.yearsTo80 })),
    answer,
    costs,
  );

/**
 * The same where the life of each bank is known already.
 *
 * @param designs in the order of the answer; `bankYears` as the wear of the file's year has it
 */
export function costsOfDesigns(
  designs: readonly { name: string; site: Site; bankYears: number }[],
  answer: CommonAnswer,
  costs: Costs,
): ComparedCost[] {
  const years = designs.map(({ site, bankYears }, d) => {
    const { hoursOfYears, litresOfYears } = answer.designs[d]!;
    const uses = hoursOfYears.map((hours, year) => ({ hours, fuelLitres: litresOfYears[year]! }));
    return costOfYears(site, uses, costs, bankYears);
  });
  return designs.map(({ name }, d) => ({
    name,
    cost: meanCost(years[d]!),
    againstBase: d === 0 ? null : costAgainst(years[d]!, years[0]!),
  }));
}

/** The cost of a design in each of several years of use. */
export const costOfYears = (site: Site, uses: readonly EngineOfYear[], costs: Costs, bankYears: number): DesignCost[] =>
  uses.map((generator) => lifeCycleOfDesign({ generator }, site, costs, bankYears));

/** What one design costs more than another, year by year; `null` without a length of the comparison or a price of fuel. */
export function costAgainst(design: readonly DesignCost[], base: readonly DesignCost[]): CostAgainst | null {
  const totals = (costs: readonly DesignCost[]) => costs.flatMap(({ known }) => (known ? [known.total] : []));
  const [of, from] = [totals(design), totals(base)];
  if (of.length !== design.length || from.length !== base.length) return null;
  const smallest = (smallestShare * from.reduce((sum, total) => sum + total, 0)) / from.length;
  return { difference: pairedDifference(of, from, smallest), ...unlikeThings(design[0]!, base[0]!) };
}
