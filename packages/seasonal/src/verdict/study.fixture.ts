import type { YearResult } from '@wintergap/year';
import type { StoreTechnology } from '../store/seasonal-store.js';
import { type StoreSize, sizeStore } from '../store/size-store.js';
import type { ClosingArray } from '../store/smallest-closing-array.js';
import type { CarryStudy } from './carry-study.js';
import { type JudgementPrices, judgeStore, type StoreJudgement } from './judge-store.js';

// Every number in this file is invented.

/** 70 % in, 50 % out, tight and never idle: 35 % round trip. */
export const plainTechnology: StoreTechnology = {
  kind: 'own',
  converterIn: { efficiency: 0.7, minimumLoad: 0, standbyW: 0 },
  standingLossPerH: 0,
  converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
};

/** A store for a year of two halves, of 10 hours each: surplus in the first, demand in the second, sums in kWh. */
export function sizeOfHalves(surplusKWh: number, demandKWh: number, technology = plainTechnology): StoreSize {
  const surplusWh = new Float64Array(20).fill(surplusKWh * 100, 0, 10);
  return sizeStore(surplusWh, new Float64Array(20).fill(demandKWh * 100, 10), technology, 0);
}

export const inventedEngine = { fuelLitresPerYear: 220, hoursPerYear: 250, lifeH: 2000 };

export const inventedPrices: JudgementPrices = {
  engine: { fuelPerL: 1.6, fuelEscalation: 0.02, servicePerH: 0.4, replacement: 1800, firstCost: 0 },
  store: {
    converterInPerKW: 25,
    storePerKWh: 20,
    converterOutPerKW: 30,
    upkeepPerYear: 40,
    otherFirstCost: 500,
    converterInYears: 12,
    storeYears: 25,
    converterOutYears: 10,
  },
  terms: { years: 20, discountRate: 0.03 },
};

/** What a store for such a year is judged to be. */
export const judged = (
  surplusKWh: number,
  demandKWh: number,
  prices: JudgementPrices | null = null,
  technology = plainTechnology,
): StoreJudgement => judgeStore(sizeOfHalves(surplusKWh, demandKWh, technology), inventedEngine, prices);

/** An array of `scale` times the design's covers the year. */
export function closingAt(scale: number, needsStore = true): ClosingArray {
  const size = sizeOfHalves(1400, 380);
  if (!size.closes) throw new Error('this store covers its year');
  return { closes: true, scale, scaleWithAllowance: 1.2 * scale, size, needsStore, yearsSimulated: 9 };
}

/** No array up to `largestTried` times the design's covers the year. */
export function neverClosing(largestTried: number): ClosingArray {
  const size = sizeOfHalves(10, 380);
  if (size.closes) throw new Error('this store does not cover its year');
  return { closes: false, largestTried, size, yearsSimulated: 5 };
}

/** The figures of a year as far as sentences ask for them: 250 engine hours, nothing dark. */
export const inventedYear = (site: object = { generator: { fuel: { price: 1.6 } } }, load = {}, ratedKW = 1.2) =>
  ({
    site: { arrays: [], ...site },
    summary: {
      site: 'Invented',
      array: { ratedKW, clippedKWh: 31 },
      generator: { hours: 250, fuelLitres: 220 },
      load: { darkKWh: 0, darkHours: 0, ...load },
    },
  }) as unknown as YearResult;

/** A study of which nothing was simulated: what sentences, cautions and the document read of it. */
export function inventedStudy(
  change: object = {},
  judgement: StoreJudgement = judged(1400, 380),
  scale = 1,
): CarryStudy {
  return {
    asItIs: inventedYear(),
    surplusKWh: 612,
    demandKWh: 380,
    settings: { store: { kind: 'own', technology: plainTechnology }, largestArray: 16 },
    costs: null,
    technology: { name: 'own', technology: plainTechnology, chain: null },
    judged: { scale, ratedKW: 1.2 * scale, year: { beyondWh: 0 }, judgement },
    arrays: [],
    closing: null,
    technologies: [],
    engineCost: null,
    asItIsCost: null,
    withStoreCost: null,
    rivals: [],
    yearsSimulated: 1,
    ...change,
  } as unknown as CarryStudy;
}
