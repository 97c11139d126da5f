import { designOf, type Site, type SiteFile } from '@wintergap/site';
import { bankFacts, PreparedCache, simulateSite, type YearResult } from '@wintergap/year';
import { arraysPrice, costsFor, ratedKW } from '../cost/bill.js';
import type { Costs } from '../cost/costs-section.js';
import { type DesignCost, lifeCycleOfDesign, lifeCycleOfYear } from '../cost/design-cost.js';
import { costOfEngine, engineYear, judgementPrices } from '../cost/judgement-prices.js';
import type { LifeCycleCost } from '../cost/life-cycle-cost.js';
import { type ConverterYear, carryBalance, converterInEnginePlace } from '../store/converter-in-engine-place.js';
import { sumAndPeak } from '../store/converter-trade.js';
import { runStore, type StoreYear } from '../store/run-store.js';
import { withScaledArray } from '../store/scaled-array.js';
import { type StoreSize, sizeStore } from '../store/size-store.js';
import { type ClosingArray, smallestClosingArray } from '../store/smallest-closing-array.js';
import { readCarryQuestion } from './carry-question.js';
import { type CarrySettings, type NamedTechnology, technologiesOf } from './carry-section.js';
import { judgeStore, type StoreJudgement } from './judge-store.js';
import { type Rival, tryRivals } from './rivals.js';

/** One array size, the year with the store's converter out in the engine's place, and the store that goes with it. */
export interface ArrayCase {
  /** Multiple of the design's array. */
  scale: number;
  ratedKW: number;
  year: ConverterYear;
  judgement: StoreJudgement;
  /** The settled year of the store judged, hour by hour. */
  storeYear: StoreYear;
}

/** Whether carrying summer surplus into winter would retire the engine of a design, and what else would help. */
export interface CarryStudy {
  /** The settled year of the design as it is. */
  asItIs: YearResult;
  /** What that year throws away, and what it asks of the engine or leaves dark, kWh at the DC bus. */
  surplusKWh: number;
  demandKWh: number;
  settings: CarrySettings;
  costs: Costs | null;
  technology: NamedTechnology;
  /** The array that the verdict is about: the design's own, or the larger one that costs least or closes first. */
  judged: ArrayCase;
  /** Array sizes in rising order. */
  arrays: ArrayCase[];
  /** `null` when there is nothing to close: no array, or no demand. */
  closing: ClosingArray | null;
  /** The judged array with every technology tried. */
  technologies: { tried: NamedTechnology; size: StoreSize }[];
  /** Life-cycle cost of letting the engine go on. */
  engineCost: LifeCycleCost | null;
  /** The whole design as it is, and with the store judged instead of its engine; `null` without costs. */
  asItIsCost: DesignCost | null;
  withStoreCost: number | null;
  rivals: Rival[];
  yearsSimulated: number;
}

/** Demand below which there is nothing to retire, kWh a year. */
const noDemandKWh = 0.05;
/** Years simulated when closing takes all its steps and no converter out has to be made larger. */
const usualYears = 25;

/**
 * Answers whether seasonal storage is worth it for a design.
 *
 * Sizes come from the year with the engine taken out and converter out in its place (`converterInEnginePlace`), for the
 * array as it stands and for arrays around the smallest that covers the year; each array size is a simulation of its
 * own. Rivals are simulated with the engine in place.
 *
 * @param onYear called before each year is simulated, with how many there were and about how many there will be at most
 * @param prepared shared with other studies of the same place
 * @throws SiteError for what is wrong in the site file
 */
export function studyCarry(
  file: SiteFile,
  variant: string | undefined,
  onYear?: (done: number, atMost: number) => void,
  prepared: PreparedCache = new PreparedCache(),
): CarryStudy {
  const site = designOf(file, variant);
  const { settings, costs: written } = readCarryQuestion(file);
  const costs = written && costsFor(site, written);
  let yearsSimulated = 0;
  const simulate = (design: typeof site): YearResult => {
    onYear?.(yearsSimulated, Math.max(usualYears, yearsSimulated));
    yearsSimulated++;
    return simulateSite(design, prepared);
  };

  const asItIs = simulate(site);
  const balance = carryBalance(asItIs);
  const surplusKWh = sumAndPeak(balance.surplusWh).sum / 1000;
  const demandKWh = sumAndPeak(balance.demandWh).sum / 1000;
  const { generator } = asItIs.summary;
  const use = engineYear(generator.fuelLitres, generator.hours, costs);
  const fuelPerL = site.generator?.fuel.price ?? null;
  const { tried, judged: technology } = technologiesOf(settings.store);
  const ownKW = ratedKW(site);
  const needsHelp = demandKWh > noDemandKWh;

  const yearAt = keptByScale((scale): ConverterYear => {
    if (needsHelp) return converterInEnginePlace(withScaledArray(site, scale), asItIs, simulate);
    return { ...balance, demandWh: new Float64Array(balance.demandWh.length), year: asItIs, powerW: 0 };
  });
  const caseAt = (scale: number): ArrayCase => {
    const year = yearAt(scale);
    const size = sizeStore(year.surplusWh, year.demandWh, technology.technology, 0);
    const moreArray = moreArrayPrice(site, scale, costs);
    const prices = moreArray === null ? null : judgementPrices(costs, fuelPerL, moreArray);
    const judgement = judgeStore(size, use, prices);
    const storeYear = runStore(year.surplusWh, year.demandWh, judgement.store, 0);
    return { scale, ratedKW: ownKW * scale, year, judgement, storeYear };
  };

  const closing =
    needsHelp && ownKW > 0 ? smallestClosingArray(yearAt, technology.technology, 0, settings.largestArray) : null;
  const arrays = scalesToShow(closing).map(caseAt);
  const judged = caseToJudge(arrays);
  return {
    asItIs,
    surplusKWh,
    demandKWh,
    settings,
    costs,
    technology,
    judged,
    arrays,
    closing,
    technologies: tried.map((one) => ({
      tried: one,
      size: sizeStore(judged.year.surplusWh, judged.year.demandWh, one.technology, 0),
    })),
    engineCost: needsHelp ? costOfEngine(use, costs, fuelPerL) : null,
    asItIsCost: costs && lifeCycleOfYear(asItIs, costs),
    withStoreCost: costs && costOfDesignWithStore(site, costs, judged),
    rivals: needsHelp ? tryRivals(asItIs, simulate, costs) : [],
    yearsSimulated,
  };
}

/** Each scale's year is simulated once. */
function keptByScale(make: (scale: number) => ConverterYear): (scale: number) => ConverterYear {
  const years = new Map<number, ConverterYear>();
  return (scale) => {
    const year = years.get(scale) ?? make(scale);
    years.set(scale, year);
    return year;
  };
}

/** The design's array, the one that covers the year, that with the allowance, and one between far-off ends. */
function scalesToShow(closing: ClosingArray | null): number[] {
  if (!closing) return [1];
  if (!closing.closes) return [1, Math.sqrt(closing.largestTried), closing.largestTried];
  const { scale, scaleWithAllowance } = closing;
  const between = scale > 1.3 ? [Math.sqrt(scale)] : [];
  return [...new Set([1, scale, scaleWithAllowance, ...between])].sort((a, b) => a - b);
}

/** The case with the cheapest store where prices tell, among arrays not smaller than the design's; else the design's. */
function caseToJudge(arrays: readonly ArrayCase[]): ArrayCase {
  const own = arrays.find(({ scale }) => scale === 1)!;
  let cheapest = own;
  let least = Number.POSITIVE_INFINITY;
  for (const one of arrays) {
    const total = one.scale >= 1 ? one.judgement.cost?.store?.total : undefined;
    if (total !== undefined && total < least) {
      least = total;
      cheapest = one;
    }
  }
  return cheapest;
}

/** What a larger array costs beyond the design's; `null` where its price is not known. */
function moreArrayPrice(site: Site, scale: number, costs: Costs | null): number | null {
  if (scale <= 1) return 0;
  if (!costs) return null;
  const own = arraysPrice(site, costs);
  const larger = arraysPrice(withScaledArray(site, scale), costs);
  return own === null || larger === null ? null : larger - own;
}

/** Array, bank with the wear of the year without the engine, and the store; `null` where a price is missing. */
function costOfDesignWithStore(site: Site, costs: Costs, { year, judgement }: ArrayCase): number | null {
  const { generator: _engine, ...withoutEngine } = site;
  const nothingRuns = { generator: { ...year.year.summary.generator, hours: 0, fuelLitres: 0 } };
  const standing = lifeCycleOfDesign(nothingRuns, withoutEngine, costs, bankFacts(year.year).wear.yearsTo80);
  const store = judgement.size.closes ? judgement.cost?.store : null;
  return standing.lifeCycle && store ? standing.lifeCycle.total + store.total : null;
}
