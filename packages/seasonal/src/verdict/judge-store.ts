import {
  checkEngineYear,
  type EnginePrices,
  type EngineYear,
  engineLifeCycle,
  type StudyTerms,
} from '../cost/engine-cost.js';
import type { LifeCycleCost } from '../cost/life-cycle-cost.js';
import { type StorePrices, storeLifeCycle } from '../cost/store-cost.js';
import type { SeasonalStore } from '../store/seasonal-store.js';
import type { StoreSize } from '../store/size-store.js';

/** Prices in one money, and the study they are compared over. Nothing has a default: what is not known is `null`. */
export interface JudgementPrices {
  engine: EnginePrices;
  store: StorePrices;
  terms: StudyTerms;
}

/** One of the two numbers that decide, and what it is held against, in the same unit. */
export interface DecidingNumber {
  what: string;
  value: number;
  unit: string;
  against: number | null;
}

export interface CostComparison {
  years: number;
  /** Present values; `null` where the price it hangs on is not known. */
  engine: LifeCycleCost | null;
  store: LifeCycleCost | null;
  /** Price per kWh of store at which both cost the same; below 0 when even a free store would not pay. */
  breakEvenStorePerKWh: number | null;
  /** Price per litre of fuel at which both cost the same; below 0 when the store pays even with free fuel. */
  breakEvenFuelPerL: number | null;
}

export interface StoreJudgement {
  /** `nothing to retire` when neither engine nor darkness answered anything; `no prices` when the store covers the year. */
  verdict: 'worth it' | 'not worth it' | 'no prices' | 'nothing to retire';
  size: StoreSize;
  /** The store judged: the cheapest between smallest converter and smallest store where prices tell. */
  store: SeasonalStore;
  engine: EngineYear;
  cost: CostComparison | null;
  deciding: readonly [DecidingNumber, DecidingNumber];
}

/**
 * Whether a seasonal store should retire the engine. Without prices the judgement is in kWh, litres and hours only.
 * Break-even prices are solved in closed form, since both life-cycle costs are straight lines in their price.
 */
export function judgeStore(size: StoreSize, engine: EngineYear, prices: JudgementPrices | null): StoreJudgement {
  checkEngineYear(engine);
  const kWh = (wh: number): number => wh / 1000;
  if (!size.closes) {
    const brought = { what: 'carried into the dark months', value: kWh(size.bringsWh), unit: 'kWh a year' };
    const asked = { what: 'asked of the engine', value: kWh(size.demandWh), unit: 'kWh a year', against: null };
    const deciding = [{ ...brought, against: asked.value }, asked] as const;
    return { verdict: 'not worth it', size, store: size.store, engine, cost: null, deciding };
  }
  const unpriced = (store: SeasonalStore): readonly [DecidingNumber, DecidingNumber] => [
    { what: 'store needed', value: kWh(store.store.capacityWh), unit: 'kWh', against: null },
    { what: 'fuel saved', value: engine.fuelLitresPerYear, unit: 'L a year', against: null },
  ];
  if (size.demandWh <= 0) {
    const deciding = unpriced(size.store);
    return { verdict: 'nothing to retire', size, store: size.store, engine, cost: null, deciding };
  }
  if (!prices) {
    return { verdict: 'no prices', size, store: size.store, engine, cost: null, deciding: unpriced(size.store) };
  }

  const store = cheapestStore(size, prices);
  const cost = compareCosts(store, engine, prices);
  const { storePerKWh } = prices.store;
  const { fuelPerL } = prices.engine;
  const breakEvenStore = { what: 'break-even price of the store', unit: 'per kWh', against: storePerKWh };
  const breakEvenFuel = { what: 'break-even price of fuel', unit: 'per L', against: fuelPerL };
  const [capacity, fuel] = unpriced(store);
  const verdict =
    cost.engine && cost.store ? (cost.store.total < cost.engine.total ? 'worth it' : 'not worth it') : 'no prices';
  return {
    verdict,
    size,
    store,
    engine,
    cost,
    deciding: [
      cost.breakEvenStorePerKWh === null ? capacity : { ...breakEvenStore, value: cost.breakEvenStorePerKWh },
      cost.breakEvenFuelPerL === null ? fuel : { ...breakEvenFuel, value: cost.breakEvenFuelPerL },
    ],
  };
}

/** Both life-cycle costs and the two break-even prices. */
function compareCosts(store: SeasonalStore, engine: EngineYear, prices: JudgementPrices): CostComparison {
  const { terms } = prices;
  const { fuelPerL } = prices.engine;
  const { storePerKWh } = prices.store;
  const engineAt = (price: number): LifeCycleCost => engineLifeCycle(engine, prices.engine, price, terms);
  const storeAt = (price: number): LifeCycleCost => storeLifeCycle(store, prices.store, price, terms);
  const engineCost = fuelPerL === null ? null : engineAt(fuelPerL);
  const storeCost = storePerKWh === null ? null : storeAt(storePerKWh);
  return {
    years: terms.years,
    engine: engineCost,
    store: storeCost,
    breakEvenStorePerKWh: engineCost && priceFor(engineCost.total, storeAt),
    breakEvenFuelPerL: storeCost && priceFor(storeCost.total, engineAt),
  };
}

/** Price at which a cost that is a straight line in it reaches a total; `null` when the price has no part in it. */
function priceFor(total: number, costAt: (price: number) => LifeCycleCost): number | null {
  const free = costAt(0).total;
  const perUnit = costAt(1).total - free;
  return perUnit > 1e-12 * Math.abs(free) && perUnit > 0 ? (total - free) / perUnit : null;
}

/** The cheapest store on the trade between converter in and capacity, at the prices known. */
function cheapestStore(size: Extract<StoreSize, { closes: true }>, prices: JudgementPrices): SeasonalStore {
  const { storePerKWh } = prices.store;
  let cheapest = size.store;
  if (storePerKWh === null) return cheapest;
  let least = Number.POSITIVE_INFINITY;
  for (const { converterInW, capacityWh, converterOutW } of size.trade) {
    const store: SeasonalStore = {
      ...size.store,
      converterIn: { ...size.store.converterIn, powerW: converterInW },
      store: { ...size.store.store, capacityWh },
      converterOut: { ...size.store.converterOut, powerW: converterOutW },
    };
    const { total } = storeLifeCycle(store, prices.store, storePerKWh, prices.terms);
    if (total < least) {
      least = total;
      cheapest = store;
    }
  }
  return cheapest;
}
