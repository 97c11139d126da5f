import { dateOfDay } from '@wintergap/ground';
import { hydrogenKg } from '../store/hydrogen.js';
import type { SeasonalStore, StoreTechnology } from '../store/seasonal-store.js';
import type { StoreSize } from '../store/size-store.js';
import { carryCautions } from './carry-cautions.js';
import type { NamedTechnology } from './carry-section.js';
import type { ArrayCase, CarryStudy } from './carry-study.js';
import { carryVerdict } from './carry-verdict.js';
import type { CostComparison, StoreJudgement } from './judge-store.js';

/** The three sizes of a store, and what they do. */
export interface StoreFigures {
  closes: boolean;
  /** Share of the need that is met, standby included; 1 when the store covers the year. */
  met: number;
  converterInKW: number;
  storeKWh: number;
  /** `null` unless the store is hydrogen. */
  hydrogenKg: number | null;
  converterOutKW: number;
}

/** The figures of a store sized for a year. */
export function storeFigures(size: StoreSize, store: SeasonalStore = size.store): StoreFigures {
  return {
    closes: size.closes,
    met: size.closes ? 1 : size.demandWh > 0 ? size.bringsWh / size.demandWh : 1,
    converterInKW: store.converterIn.powerW / 1000,
    storeKWh: store.store.capacityWh / 1000,
    hydrogenKg: store.kind === 'hydrogen' ? hydrogenKg(store.store.capacityWh) : null,
    converterOutKW: store.converterOut.powerW / 1000,
  };
}

/** One array size of the study. */
export interface CaseFigures extends StoreFigures {
  scale: number;
  ratedKW: number;
  surplusKWh: number;
  demandKWh: number;
  storeCost: number | null;
}

/** The document of `carry --json`. */
export interface CarrySummary
  extends Pick<CarryStudy, 'engineCost' | 'asItIsCost' | 'withStoreCost' | 'rivals' | 'yearsSimulated'> {
  site: CarryStudy['asItIs']['summary']['site'];
  verdict: StoreJudgement['verdict'];
  sentence: string;
  deciding: StoreJudgement['deciding'];
  asItIs: {
    surplusKWh: number;
    clippedKWh: number;
    demandKWh: number;
    generatorHours: number;
    fuelLitres: number;
    darkKWh: number;
  };
  technology: Pick<StoreTechnology, 'kind' | 'converterIn' | 'standingLossPerH' | 'converterOut'> & {
    /** How hydrogen is kept; `null` for other stores. */
    keeping: string | null;
    chain: NamedTechnology['chain'];
  };
  judged: CaseFigures & {
    /** Dates, `MM-DD`. */
    fullestOn: string;
    emptiestOn: string;
    turnsPerYear: number;
    takenKWh: number;
    givenKWh: number;
    standbyKWh: number;
    standingLossKWh: number;
  };
  arrays: CaseFigures[];
  /** What covers the year; `null` when there is nothing to cover. */
  closing: {
    closes: boolean;
    scale: number | null;
    scaleWithAllowance: number | null;
    largestTried: number | null;
    needsStore: boolean | null;
  } | null;
  technologies: (StoreFigures & { name: string; roundTrip: number })[];
  cost: CostComparison | null;
  cautions: { code: string; text: string }[];
}

/** The study as one plain document, for `carry --json`: energies in kWh, power in kW, fractions 0 to 1. */
export function carrySummary(study: CarryStudy): CarrySummary {
  const { asItIs, judged, closing, technology, settings } = study;
  const { summary } = asItIs;
  const { totals } = judged.storeYear;
  const { converterIn, converterOut, standingLossPerH } = technology.technology;
  return {
    site: summary.site,
    verdict: judged.judgement.verdict,
    sentence: carryVerdict(study, 'metric'),
    deciding: judged.judgement.deciding,
    asItIs: {
      surplusKWh: study.surplusKWh,
      clippedKWh: summary.array.clippedKWh,
      demandKWh: study.demandKWh,
      generatorHours: summary.generator.hours,
      fuelLitres: summary.generator.fuelLitres,
      darkKWh: summary.load.darkKWh,
    },
    technology: {
      kind: technology.technology.kind,
      keeping: settings.store.kind === 'hydrogen' ? settings.store.keeping : null,
      chain: technology.chain,
      converterIn,
      standingLossPerH,
      converterOut,
    },
    judged: {
      ...caseFigures(judged),
      fullestOn: dateOfDay(Math.floor(totals.fullestHour / 24)),
      emptiestOn: dateOfDay(Math.floor(totals.emptiestHour / 24)),
      turnsPerYear: totals.turnsPerYear,
      takenKWh: totals.takenWh / 1000,
      givenKWh: totals.givenWh / 1000,
      standbyKWh: totals.standbyWh / 1000,
      standingLossKWh: totals.standingLossWh / 1000,
    },
    arrays: study.arrays.map(caseFigures),
    closing: closing && {
      closes: closing.closes,
      scale: closing.closes ? closing.scale : null,
      scaleWithAllowance: closing.closes ? closing.scaleWithAllowance : null,
      largestTried: closing.closes ? null : closing.largestTried,
      needsStore: closing.closes ? closing.needsStore : null,
    },
    technologies: study.technologies.map(({ tried, size }) => ({
      name: tried.name,
      roundTrip: size.roundTrip,
      ...storeFigures(size),
    })),
    cost: judged.judgement.cost,
    engineCost: study.engineCost,
    asItIsCost: study.asItIsCost,
    withStoreCost: study.withStoreCost,
    rivals: study.rivals,
    cautions: carryCautions(study),
    yearsSimulated: study.yearsSimulated,
  };
}

function caseFigures({ scale, ratedKW, judgement }: ArrayCase): CaseFigures {
  return {
    scale,
    ratedKW,
    surplusKWh: judgement.size.surplusWh / 1000,
    demandKWh: judgement.size.demandWh / 1000,
    ...storeFigures(judgement.size, judgement.store),
    storeCost: judgement.cost?.store?.total ?? null,
  };
}
