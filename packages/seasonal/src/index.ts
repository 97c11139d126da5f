export { billOf, costsFor, labelledKWh, ratedKW, unpricedNames } from './cost/bill.js';
export { meanCost, type UnlikeThings, unlikeThings } from './cost/cost-difference.js';
export { type Costs, costsSection, type EngineCosts, readCosts, type StoreCosts } from './cost/costs-section.js';
export { type DesignCost, lifeCycleOfDesign, lifeCycleOfYear, type UnpricedThing } from './cost/design-cost.js';
export type { EnginePrices, EngineYear, StudyTerms } from './cost/engine-cost.js';
export { type CostPlan, type LifeCycleCost, lifeCycleCost } from './cost/life-cycle-cost.js';
export { presentValueOfPayment, presentValueOfReplacements, presentValueOfSeries } from './cost/present-value.js';
export type { StorePrices } from './cost/store-cost.js';
export type { CarryBalance, ConverterYear, Simulate } from './store/converter-in-engine-place.js';
export type { TradePoint } from './store/converter-trade.js';
export type { HydrogenChain, HydrogenKeeping } from './store/hydrogen.js';
export { runStore, type StoreTotals, type StoreYear } from './store/run-store.js';
export { withScaledArray } from './store/scaled-array.js';
export type { SeasonalStore, StoreConverter, StoreTechnology } from './store/seasonal-store.js';
export { type SequentPeak, sequentPeak } from './store/sequent-peak.js';
export { type StoreSize, sizeStore } from './store/size-store.js';
export type { ClosingArray, ScaledYear } from './store/smallest-closing-array.js';
export { carryCautions } from './verdict/carry-cautions.js';
export {
  type CarrySettings,
  type CarryStore,
  carrySection,
  type Idling,
  type NamedTechnology,
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
export { type Rival, type RivalDesign, rivalDesigns } from './verdict/rivals.js';
export { verdictText } from './verdict/verdict-text.js';
