import type { JudgementPrices } from '../verdict/judge-store.js';
import { type Costs, type StoreCosts, usualEngineYears } from './costs-section.js';
import { engineLifeH, enginePrices } from './design-cost.js';
import { type EngineYear, engineLifeCycle } from './engine-cost.js';
import type { LifeCycleCost } from './life-cycle-cost.js';

const fuelOnly = { price: 0, lifeH: null, lifeYears: usualEngineYears, servicePerH: 0, alreadyThere: false };

/**
 * Prices in the form a store is judged by; `null` when the comparison has no length or the store no prices. Parts
 * without a known life last as long as the comparison; an engine without prices is counted by its fuel alone.
 *
 * @param fuelPerL the generator's price of fuel; `null` when not known or without a generator
 * @param moreArray what a larger array costs beyond the one that stands
 */
export function judgementPrices(
  costs: Costs | null,
  fuelPerL: number | null,
  moreArray: number,
): JudgementPrices | null {
  if (!costs || costs.years === null || !costs.store) return null;
  const { years, discountRate, store } = costs;
  return {
    engine: enginePrices(costs.engine ?? fuelOnly, costs, fuelPerL),
    store: storePrices(store, years, moreArray),
    terms: { years, discountRate },
  };
}

function storePrices(store: StoreCosts, years: number, moreArray: number): JudgementPrices['store'] {
  return {
    converterInPerKW: store.inPerKW,
    storePerKWh: store.keptPerKWh,
    converterOutPerKW: store.outPerKW,
    upkeepPerYear: store.upkeepPerYear,
    otherFirstCost: store.other + moreArray,
    converterInYears: store.inYears ?? years,
    storeYears: store.keptYears ?? years,
    converterOutYears: store.outYears ?? years,
  };
}

/** What the engine does in a year, with the life its prices give it. */
export function engineYear(fuelLitres: number, hours: number, costs: Costs | null): EngineYear {
  const lifeH = engineLifeH(costs?.engine?.lifeH ?? null, hours, costs?.years ?? 1);
  const lifeYears = costs?.engine?.lifeYears ?? usualEngineYears;
  return { fuelLitresPerYear: fuelLitres, hoursPerYear: hours, lifeH, lifeYears };
}

/** Life-cycle cost of letting the engine go on: all that a store may cost. `null` without a fuel price or years. */
export function costOfEngine(use: EngineYear, costs: Costs | null, fuelPerL: number | null): LifeCycleCost | null {
  if (!costs || costs.years === null || fuelPerL === null) return null;
  const terms = { years: costs.years, discountRate: costs.discountRate };
  return engineLifeCycle(use, enginePrices(costs.engine ?? fuelOnly, costs, fuelPerL), fuelPerL, terms);
}
