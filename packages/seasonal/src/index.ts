export { type Costs, type EngineCosts, readCosts, type StoreCosts } from './cost/costs-section.js';
export { type DesignCost, labelledKWh, lifeCycleOfDesign, lifeCycleOfYear, ratedKW } from './cost/design-cost.js';
export { type EnginePrices, type EngineYear, engineLifeCycle, type StudyTerms } from './cost/engine-cost.js';
export { type CostPlan, evenSalvage, type LifeCycleCost, lifeCycleCost } from './cost/life-cycle-cost.js';
export {
  presentValueOfPayment,
  presentValueOfReplacements,
  presentValueOfSeries,
  replacementsWithin,
} from './cost/present-value.js';
export { type StorePrices, storeLifeCycle } from './cost/store-cost.js';
export {
  type CarryBalance,
  type ConverterYear,
  carryBalance,
  converterInEnginePlace,
  type Simulate,
} from './store/converter-in-engine-place.js';
export type { TradePoint } from './store/converter-trade.js';
export { dailyMeanDemand } from './store/daily-mean-demand.js';
export {
  type HydrogenChain,
  type HydrogenKeeping,
  hydrogenCaution,
  hydrogenChain,
  hydrogenKg,
  hydrogenLowerHeatWhPerKg,
  hydrogenRange,
  hydrogenTechnology,
} from './store/hydrogen.js';
export { runStore, type StoreTotals, type StoreYear } from './store/run-store.js';
export { withScaledArray } from './store/scaled-array.js';
export {
  type Converter,
  roundTripEfficiency,
  type SeasonalStore,
  type StoreTechnology,
  sizedStore,
} from './store/seasonal-store.js';
export { type SequentPeak, sequentPeak, sequentPeakWithLoss } from './store/sequent-peak.js';
export { type StoreSize, sizeStore } from './store/size-store.js';
export {
  type ClosingArray,
  closingArrayAllowance,
  type ScaledYear,
  smallestClosingArray,
} from './store/smallest-closing-array.js';
export { carryCautions } from './verdict/carry-cautions.js';
export {
  type CarrySettings,
  type CarryStore,
  type Idling,
  type NamedTechnology,
  readCarry,
  technologiesOf,
} from './verdict/carry-section.js';
export { type ArrayCase, type CarryStudy, studyCarry } from './verdict/carry-study.js';
export { carrySummary, type StoreFigures, storeFigures } from './verdict/carry-summary.js';
export { carryVerdict } from './verdict/carry-verdict.js';
export {
  type CostComparison,
  type DecidingNumber,
  type JudgementPrices,
  judgeStore,
  type StoreJudgement,
} from './verdict/judge-store.js';
export { type Rival, type RivalDesign, rivalDesigns, tryRivals } from './verdict/rivals.js';
export { verdictText } from './verdict/verdict-text.js';
