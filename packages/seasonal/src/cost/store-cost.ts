import { mustLie } from '@wintergap/ground';
import type { SeasonalStore } from '../store/seasonal-store.js';
import type { StudyTerms } from './engine-cost.js';
import { evenSalvage, type LifeCycleCost, lifeCycleCost } from './life-cycle-cost.js';

export interface StorePrices {
  /** Per kW drawn from the bus. */
  converterInPerKW: number;
  /** Per kWh at the store; for hydrogen per kWh of lower heat. `null` when not known. */
  storePerKWh: number | null;
  /** Per kW given to the bus. */
  converterOutPerKW: number;
  upkeepPerYear: number;
  /** All else bought at the start: a larger array, the licensed design, a shed. Taken to outlast the study. */
  otherFirstCost: number;
  /** Lives in years. */
  converterInYears: number;
  storeYears: number;
  converterOutYears: number;
}

/** Life-cycle cost of a store at a given price per kWh at the store. */
export function storeLifeCycle(
  store: SeasonalStore,
  prices: StorePrices,
  storePerKWh: number,
  terms: StudyTerms,
): LifeCycleCost {
  for (const name of ['converterInPerKW', 'converterOutPerKW', 'upkeepPerYear', 'otherFirstCost'] as const) {
    mustLie(name, prices[name], 0, Number.POSITIVE_INFINITY);
  }
  mustLie('storePerKWh', storePerKWh, 0, Number.POSITIVE_INFINITY);
  const parts = [
    { cost: (store.converterIn.powerW / 1000) * prices.converterInPerKW, everyYears: prices.converterInYears },
    { cost: (store.store.capacityWh / 1000) * storePerKWh, everyYears: prices.storeYears },
    { cost: (store.converterOut.powerW / 1000) * prices.converterOutPerKW, everyYears: prices.converterOutYears },
  ];
  let firstCost = prices.otherFirstCost;
  let salvage = 0;
  for (const { cost, everyYears } of parts) {
    firstCost += cost;
    salvage += evenSalvage(cost, everyYears, terms.years);
  }
  return lifeCycleCost({
    firstCost,
    yearly: [{ amount: prices.upkeepPerYear, escalation: 0 }],
    replacements: parts,
    years: terms.years,
    discountRate: terms.discountRate,
    salvage,
  });
}
