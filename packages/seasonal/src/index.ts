export { carryCautions } from './carry-cautions.js';
export {
  type CarrySettings,
  type CarryStore,
  type Idling,
  type NamedTechnology,
  readCarry,
  technologiesOf,
} from './carry-section.js';
export { type ArrayCase, type CarryStudy, studyCarry } from './carry-study.js';
export { carrySummary, type StoreFigures, storeFigures } from './carry-summary.js';
export { carryVerdict } from './carry-verdict.js';
export {
  type CarryBalance,
  type ConverterYear,
  carryBalance,
  converterInEnginePlace,
  type Simulate,
} from './converter-in-engine-place.js';
export type { TradePoint } from './converter-trade.js';
export { type Costs, type EngineCosts, readCosts, type StoreCosts } from './costs-section.js';
export { dailyMeanDemand } from './daily-mean-demand.js';
export { type DesignCost, labelledKWh, lifeCycleOfDesign, lifeCycleOfYear, ratedKW } from './design-cost.js';
export { type EnginePrices, type EngineUse, engineLifeCycle, type StudyTerms } from './engine-cost.js';
export {
  type HydrogenChain,
  type HydrogenKeeping,
  hydrogenCaution,
  hydrogenChain,
  hydrogenKg,
  hydrogenLowerHeatWhPerKg,
  hydrogenRange,
  hydrogenTechnology,
} from './hydrogen.js';
export {
  type CostComparison,
  type DecidingNumber,
  type JudgementPrices,
  judgeStore,
  type StoreJudgement,
} from './judge-store.js';
export { type CostPlan, evenSalvage, type LifeCycleCost, lifeCycleCost } from './life-cycle-cost.js';
export {
  presentValueOfPayment,
  presentValueOfReplacements,
  presentValueOfSeries,
  replacementsWithin,
} from './present-value.js';
export { type Rival, type RivalDesign, rivalDesigns, tryRivals } from './rivals.js';
export { runStore, type StoreTotals, type StoreYear } from './run-store.js';
export { withScaledArray } from './scaled-array.js';
export {
  type Converter,
  roundTripEfficiency,
  type SeasonalStore,
  type StoreTechnology,
  sizedStore,
} from './seasonal-store.js';
export { type SequentPeak, sequentPeak, sequentPeakWithLoss } from './sequent-peak.js';
export { type StoreSize, sizeStore } from './size-store.js';
export {
  type ClosingArray,
  closingArrayAllowance,
  type ScaledYear,
  smallestClosingArray,
} from './smallest-closing-array.js';
export { type StorePrices, storeLifeCycle } from './store-cost.js';
export { verdictText } from './verdict-text.js';
