import { mustLie } from '@wintergap/ground';
import { evenSalvage, type LifeCycleCost, lifeCycleCost } from './life-cycle-cost.js';
import { replacementsWithin } from './present-value.js';

/** What the engine does in the base design's year. */
export interface EngineYear {
  fuelLitresPerYear: number;
  hoursPerYear: number;
  /** Running hours until the engine is replaced. */
  lifeH: number;
  /** Years until it is replaced however little it runs; by its hours alone when not given. */
  lifeYears?: number | undefined;
}

export interface EnginePrices {
  /** Fuel as it stands in the tank, haulage included; `null` when not known. */
  fuelPerL: number | null;
  /** Yearly rise of the fuel price beyond other prices. */
  fuelEscalation: number;
  /** Oil, filters and service per running hour. */
  servicePerH: number;
  replacement: number;
  /** Price of the engine now; 0 when it stands already. */
  firstCost: number;
}

/** Length of the comparison and its discount rate. */
export interface StudyTerms {
  years: number;
  discountRate: number;
}

/** Life-cycle cost of letting the engine go on, at a given fuel price. */
export function engineLifeCycle(
  engine: EngineYear,
  prices: EnginePrices,
  fuelPerL: number,
  terms: StudyTerms,
): LifeCycleCost {
  const { fuelLitresPerYear, hoursPerYear, lifeH } = engine;
  checkEngineYear(engine);
  for (const name of ['servicePerH', 'replacement', 'firstCost'] as const) {
    mustLie(name, prices[name], 0, Number.POSITIVE_INFINITY);
  }
  mustLie('fuelPerL', fuelPerL, 0, Number.POSITIVE_INFINITY);
  // An engine that does not run is not worn out by hours; a life beyond any study stands for that.
  const everyYears = Math.min(hoursPerYear > 0 ? lifeH / hoursPerYear : 1e6, engine.lifeYears ?? 1e6);
  const lastBought = replacementsWithin(everyYears, terms.years) > 0 ? prices.replacement : prices.firstCost;
  return lifeCycleCost({
    firstCost: prices.firstCost,
    yearly: [
      { amount: fuelLitresPerYear * fuelPerL, escalation: prices.fuelEscalation },
      { amount: hoursPerYear * prices.servicePerH, escalation: 0 },
    ],
    replacements: [{ cost: prices.replacement, everyYears }],
    years: terms.years,
    discountRate: terms.discountRate,
    salvage: evenSalvage(lastBought, everyYears, terms.years),
  });
}

/** @throws OutOfRangeError naming the first value out of range */
export function checkEngineYear({ fuelLitresPerYear, hoursPerYear, lifeH, lifeYears = 1 }: EngineYear): void {
  mustLie('fuelLitresPerYear', fuelLitresPerYear, 0, Number.POSITIVE_INFINITY);
  mustLie('hoursPerYear', hoursPerYear, 0, 8784);
  mustLie('lifeH', lifeH, 10, Number.POSITIVE_INFINITY);
  mustLie('lifeYears', lifeYears, 1, 1000);
}
