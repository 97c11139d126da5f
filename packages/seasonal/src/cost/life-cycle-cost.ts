import { mustLie } from '@wintergap/ground';
import {
  checkAmount,
  checkYears,
  presentValueOfPayment,
  presentValueOfReplacements,
  presentValueOfSeries,
  replacementsWithin,
} from './present-value.js';

/** What a choice costs over the years of a study, all amounts in one money. */
export interface CostPlan {
  firstCost: number;
  /** Payments at the end of every year, in today's price; escalation per year beyond the price level of the rate. */
  yearly: readonly { amount: number; escalation: number }[];
  /** Parts bought again at today's price each time their life is over. */
  replacements: readonly { cost: number; everyYears: number }[];
  /** Length of the study, whole years. */
  years: number;
  /** Per year: real if prices are today's, which is what escalation 0 means. */
  discountRate: number;
  /** What is left at the end of the study, in the money of that year. */
  salvage: number;
}

/** Present values of the parts of a life-cycle cost; `total` = first + yearly + replacements - salvage. */
export interface LifeCycleCost {
  total: number;
  firstCost: number;
  yearly: number;
  replacements: number;
  salvage: number;
}

/** Life-cycle cost in present value. Source: ASTM E917. */
export function lifeCycleCost(plan: CostPlan): LifeCycleCost {
  const { firstCost, years, discountRate } = plan;
  checkYears(years);
  checkAmount('firstCost', firstCost);
  let yearly = 0;
  for (const { amount, escalation } of plan.yearly) {
    yearly += presentValueOfSeries(amount, years, discountRate, escalation);
  }
  let replacements = 0;
  for (const { cost, everyYears } of plan.replacements) {
    replacements += presentValueOfReplacements(cost, everyYears, years, discountRate);
  }
  const salvage = presentValueOfPayment(plan.salvage, years, discountRate);
  return { total: firstCost + yearly + replacements - salvage, firstCost, yearly, replacements, salvage };
}

/**
 * What is left of a part at the end of the study when its worth falls evenly over its life.
 * Common practice, no source; ASTM E917 leaves the residual value to the analyst.
 */
export function evenSalvage(cost: number, everyYears: number, years: number): number {
  mustLie('cost', cost, 0, Number.POSITIVE_INFINITY);
  checkYears(years);
  const bought = (1 + replacementsWithin(everyYears, years)) * everyYears;
  return cost * Math.max(0, Math.min(1, (bought - years) / everyYears));
}
