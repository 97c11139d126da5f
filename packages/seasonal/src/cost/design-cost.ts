import type { Site } from '@wintergap/site';
import type { Summary } from '@wintergap/tally';
import { bankFacts, type YearResult } from '@wintergap/year';
import { type Costs, usualEngineYears } from './costs-section.js';
import { type EnginePrices, engineLifeCycle } from './engine-cost.js';
import { evenSalvage, type LifeCycleCost, lifeCycleCost } from './life-cycle-cost.js';
import { presentValueOfSeries } from './present-value.js';

/** What a design costs to buy and to run. `null` where a price it hangs on is not known. */
export interface DesignCost {
  /** Array, bank and engine as bought today. */
  firstCost: number | null;
  /** Fuel and service of the engine in the first year. */
  runningPerYear: number | null;
  /** Present value of first cost, fuel, service and replacements, less what is left at the end. */
  lifeCycle: LifeCycleCost | null;
  /** The life-cycle cost as an even payment at the end of every year. */
  perYear: number | null;
  /** Years after which the bank is bought again, in this use and at its temperatures. */
  bankYears: number;
  /** Keys of the site file whose absence left something open. */
  missing: string[];
}

/** Rated power of all arrays at standard test conditions, kW. */
export const ratedKW = ({ arrays }: Site): number =>
  arrays.reduce((sum, { inSeries, strings, module }) => sum + inSeries * strings * module.vmp * module.imp, 0) / 1000;

/** Labelled capacity of the bank at its nominal voltage, kWh. */
export const labelledKWh = ({ bank }: Site): number => (bank.voltage * bank.capacity) / 1000;

/**
 * Life-cycle cost of a design by ASTM E917: array, bank and engine bought at the start, the bank again whenever it is
 * worn out, the engine after its running hours or its years, fuel and service every year. The array outlasts the comparison and is
 * worth nothing at its end. Inverter and loads are the same in all designs compared and are left out.
 *
 * @param bankYears years until the bank is replaced, above 0: `bankFacts(year).wear.yearsTo80`
 */
export function lifeCycleOfDesign(
  { generator }: Pick<Summary, 'generator'>,
  site: Site,
  costs: Costs,
  bankYears: number,
): DesignCost {
  const array = costs.arrayPerKW === null ? null : ratedKW(site) * costs.arrayPerKW;
  const bank = costs.bankPerKWh === null ? null : labelledKWh(site) * costs.bankPerKWh;
  const fuelPerL = site.generator?.fuel.price ?? (generator.fuelLitres === 0 ? 0 : null);
  const engine = site.generator ? costs.engine : noEngine;
  const missing = Object.entries({
    'costs.array': array,
    'costs.bank': bank,
    'costs.engine': engine,
    'generator.fuel.price': fuelPerL,
    'costs.years': costs.years,
  }).flatMap(([key, value]) => (value === null ? [key] : []));
  const bought = engine && (engine.alreadyThere ? 0 : engine.price);
  const firstCost = array === null || bank === null || bought === null ? null : array + bank + bought;
  const runningPerYear =
    fuelPerL === null || engine === null
      ? null
      : generator.fuelLitres * fuelPerL + generator.hours * engine.servicePerH;
  const { years, discountRate } = costs;
  const life = Math.min(Math.max(bankYears, shortestLifeYears), longestLifeYears);
  if (array === null || bank === null || fuelPerL === null || engine === null || years === null) {
    return { firstCost, runningPerYear, lifeCycle: null, perYear: null, bankYears: life, missing };
  }
  const standing = lifeCycleCost({
    firstCost: array + bank,
    yearly: [],
    replacements: [{ cost: bank, everyYears: life }],
    years,
    discountRate,
    salvage: evenSalvage(bank, life, years),
  });
  const use = {
    fuelLitresPerYear: generator.fuelLitres,
    hoursPerYear: generator.hours,
    lifeH: engineLifeH(engine.lifeH, generator.hours, years),
    lifeYears: engine.lifeYears,
  };
  const running = engineLifeCycle(use, enginePrices(engine, costs, fuelPerL), fuelPerL, { years, discountRate });
  const lifeCycle = sumOf(standing, running);
  const perYear = lifeCycle.total / presentValueOfSeries(1, years, discountRate, 0);
  return { firstCost, runningPerYear, lifeCycle, perYear, bankYears: life, missing };
}

/** The same for a year just simulated, with the wear of its bank. */
export function lifeCycleOfYear(year: YearResult, costs: Costs): DesignCost {
  return lifeCycleOfDesign(year.summary, year.site, costs, bankFacts(year).wear.yearsTo80);
}

const noEngine = { price: 0, lifeH: null, lifeYears: usualEngineYears, servicePerH: 0, alreadyThere: false };

// Lives a wear sum can give for a bank that is ruined in weeks, or that nothing wears.
const shortestLifeYears = 0.1;
const longestLifeYears = 1000;

/** Running hours after which an engine is replaced; without a known life its hours last exactly as long as the study. */
export function engineLifeH(lifeH: number | null, hoursPerYear: number, years: number): number {
  return lifeH ?? Math.max(10, hoursPerYear * years);
}

/** An engine's prices as the life-cycle cost takes them. */
export function enginePrices(
  engine: NonNullable<Costs['engine']>,
  costs: Costs,
  fuelPerL: number | null,
): EnginePrices {
  return {
    fuelPerL,
    fuelEscalation: costs.fuelEscalation,
    servicePerH: engine.servicePerH,
    replacement: engine.price,
    firstCost: engine.alreadyThere ? 0 : engine.price,
  };
}

function sumOf(a: LifeCycleCost, b: LifeCycleCost): LifeCycleCost {
  return {
    total: a.total + b.total,
    firstCost: a.firstCost + b.firstCost,
    yearly: a.yearly + b.yearly,
    replacements: a.replacements + b.replacements,
    salvage: a.salvage + b.salvage,
  };
}
