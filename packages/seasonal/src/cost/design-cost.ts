import type { Site } from '@wintergap/site';
import { engineFigures, type Summary } from '@wintergap/tally';
import { type BareYear, bankWear } from '@wintergap/year';
import { type BillLine, billOf, engineOf } from './bill.js';
import { type Costs, usualEngineYears } from './costs-section.js';
import { type EnginePrices, engineLifeCycle } from './engine-cost.js';
import { evenSalvage, type LifeCycleCost, lifeCycleCost } from './life-cycle-cost.js';
import { presentValueOfSeries } from './present-value.js';

/** What a design costs to buy and to run. `null` where a price it hangs on is not known. */
export interface DesignCost {
  /** Everything with a price as bought today, the engine too unless it stands there already. */
  firstCost: number | null;
  /** Fuel, service of the engine and upkeep in the first year. */
  runningPerYear: number | null;
  /** Present value of first cost, fuel, service, upkeep and replacements, less what is left at the end. */
  lifeCycle: LifeCycleCost | null;
  /** The life-cycle cost as an even payment at the end of every year. */
  perYear: number | null;
  /** Years after which the bank is bought again: as the site file says, or in this use and at its temperatures. */
  bankYears: number;
  /** Keys of the site file whose absence left something open. */
  missing: string[];
  /**
   * Life-cycle cost of all that has a price, whatever is missing beside it; `null` without a length of the comparison or
   * a price of the fuel that is burnt. Alone it says little; against another design it says what the rest may cost.
   */
  known: LifeCycleCost | null;
  /** What has no price and is not in any of these figures. */
  unpriced: UnpricedThing[];
}

/** A thing without a price. */
export type UnpricedThing = Pick<BillLine, 'part' | 'name' | 'thing'>;

/**
 * Life-cycle cost of a design by ASTM E917: all on its bill bought at the start, the bank again whenever it is worn out,
 * the engine after its running hours or its years, other things after their lives, fuel, service and upkeep every year.
 * Things without a life outlast the comparison and are worth nothing at its end. Cabinet, inverter, mounts and controllers
 * without a price are left out and named; loads are the same in all designs compared.
 *
 * @param bankYears years until the bank is replaced, above 0: `bankFacts(year).wear.yearsTo80`
 */
export function lifeCycleOfDesign(
  { generator }: { generator: Pick<Summary['generator'], 'hours' | 'fuelLitres'> },
  site: Site,
  costs: Costs,
  bankYears: number,
): DesignCost {
  const bill = billOf(site, costs);
  const unpriced = bill.filter(({ price }) => price === null).map(({ part, name, thing }) => ({ part, name, thing }));
  const lacks = (part: BillLine['part']) => unpriced.some((thing) => thing.part === part);
  const fuelPerL = site.generator?.fuel.price ?? (generator.fuelLitres === 0 ? 0 : null);
  const { years, discountRate } = costs;
  const missing = Object.entries({
    'costs.array': lacks('array'),
    'costs.bank': lacks('bank'),
    'costs.engine': lacks('engine'),
    'generator.fuel.price': fuelPerL === null,
    'costs.years': years === null,
  }).flatMap(([key, isMissing]) => (isMissing ? [key] : []));

  const engine = engineOf(site, costs) ?? noEngine;
  const standing = bill.filter(({ part }) => part !== 'engine');
  const bought = standing.reduce((sum, { price }) => sum + (price ?? 0), engine.alreadyThere ? 0 : engine.price);
  const upkeep = bill.reduce((sum, { upkeepPerYear }) => sum + upkeepPerYear, 0);
  const usedPerYear = generator.fuelLitres * (fuelPerL ?? 0) + generator.hours * (engine.servicePerH ?? 0);
  const life = Math.min(Math.max(bankYears, shortestLifeYears), longestLifeYears);
  const livesOf = ({ part, livesYears }: BillLine) => livesYears ?? (part === 'bank' ? life : null);
  const bank = bill.find(({ part }) => part === 'bank')!;

  const sum = (): LifeCycleCost | null => {
    if (years === null || fuelPerL === null) return null;
    const terms = { years, discountRate };
    const use = {
      fuelLitresPerYear: generator.fuelLitres,
      hoursPerYear: generator.hours,
      lifeH: engineLifeH(engine.lifeH, generator.hours, years),
      lifeYears: engine.lifeYears,
    };
    const running = engineLifeCycle(use, enginePrices(engine, costs, fuelPerL), fuelPerL, terms);
    return bill.reduce((total, line) => sumOf(total, lifeCycleOfLine(line, livesOf(line), terms)), running);
  };
  const known = sum();
  const lifeCycle = missing.length === 0 ? known : null;
  return {
    firstCost: lacks('array') || lacks('bank') || lacks('engine') ? null : bought,
    runningPerYear: fuelPerL === null || lacks('engine') ? null : usedPerYear + upkeep,
    lifeCycle,
    perYear: lifeCycle && lifeCycle.total / presentValueOfSeries(1, years!, discountRate, 0),
    bankYears: livesOf(bank)!,
    missing,
    known,
    unpriced,
  };
}

/** One line of the bill over the years of the comparison; of an engine its upkeep alone, the rest goes with its use. */
function lifeCycleOfLine(
  { part, price, upkeepPerYear }: BillLine,
  everyYears: number | null,
  { years, discountRate }: { years: number; discountRate: number },
): LifeCycleCost {
  const cost = part === 'engine' ? 0 : (price ?? 0);
  return lifeCycleCost({
    firstCost: cost,
    yearly: [{ amount: upkeepPerYear, escalation: 0 }],
    replacements: everyYears === null ? [] : [{ cost, everyYears }],
    years,
    discountRate,
    salvage: everyYears === null ? 0 : evenSalvage(cost, everyYears, years),
  });
}

/** The same for a year just simulated, with the wear of its bank. */
export function lifeCycleOfYear(year: BareYear, costs: Costs): DesignCost {
  return lifeCycleOfDesign({ generator: engineFigures(year.ledger) }, year.site, costs, bankWear(year).yearsTo80);
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
    servicePerH: engine.servicePerH ?? 0,
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
