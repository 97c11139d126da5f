export { type CommonRivals, commonRivals } from './carry/common-rivals.js';
export { type CommonAnswer, type CommonFigures, commonAnswer } from './common/common-answer.js';
export { beginYears } from './common/common-run.js';
export type { BegunYears, CommonRun, CommonWish, NamedSite } from './common/common-wish.js';
export {
  type CommonYears,
  type CommonYearsWish,
  commonWeather,
  commonYears,
  commonYearsFrom,
  type RealYears,
} from './common/common-years.js';
export { compareDesigns, designsOf } from './common/compare-designs.js';
export { fileYear } from './common/file-year.js';
export type { Merit } from './common/merit.js';
export type { PairedDifference, YearsMean } from './common/paired-difference.js';
export { runDesigns, runUntilClear } from './common/run-designs.js';
export { type SnowRange, snowCovers, snowRange } from './common/snow-range.js';
export { type Growing, mostCommonYears, untilClear } from './common/until-clear.js';
export { type ComparedCost, type CostAgainst, comparedCosts, costsOfDesigns } from './compare/design-costs.js';
export { type NamedResult, reasonRuns, type VariantReasons, variantReasons } from './compare/variant-reasons.js';
export type { DesignAxis } from './design/axis.js';
export { type DesignOrder, designCount, type SweepPart, wholeSweep } from './design/order.js';
export { type HandArray, type HandArrayQuestion, type HandMonth, type HandString, handArray } from './hand/array.js';
export { type HandBank, type HandBankQuestion, handBank } from './hand/bank.js';
export type { HandForYear, HandSettings } from './hand/from-year.js';
export { type HandAnswer, type HandQuestion, handMethod } from './hand/method.js';
export { temperatureFactor } from './hand/temperature.js';
export { type MountPrices, mountPricesOf } from './mount/mount-prices.js';
export { type MountRow, type MountStudy, mountStudy } from './mount/mount-study.js';
export type { Outcome, Weight } from './outcome.js';
export type { ManyYearsSettings } from './outlook/many-years.js';
export { type Outlook, outlookFrom, outlookOf } from './outlook/outlook.js';
export type { QuantileRange } from './outlook/quantile-range.js';
export { type Ranked, type RankedFigure, rankYears } from './outlook/rank.js';
export type { ShareRange } from './outlook/share-range.js';
export { type OutlookTask, type OutlookWeather, type OutlookWish, outlookWeather } from './outlook/years.js';
export { type Rerun, rerunOf } from './rerun.js';
export { type SizeAnswer, type SizedDesign, sizeDesign } from './size/design.js';
export type { Candidate, SearchResult, Tried } from './size/search.js';
export { readSize, type SizeQuestion, sizeSection } from './size/section.js';
export type { SnowTargets } from './size/snow-targets.js';
export { type Miss, missesOf, type TargetFigure, type Targets, type TargetValues } from './size/targets.js';
export { BestDesigns, type Ranking, type SweepSummary } from './sweep/best.js';
export { type CommonBest, commonBest } from './sweep/common-best.js';
export { openSweepFile, type SweepFile } from './sweep/file.js';
export { SweepFileError } from './sweep/file-error.js';
export { valueText } from './sweep/format.js';
export type { FrontDesign } from './sweep/front.js';
export type { SweepHeader } from './sweep/header.js';
export { joinSweep } from './sweep/join.js';
export { planSweep, type SweepPlan } from './sweep/plan.js';
export {
  type RunRow,
  resultColumns,
  type SweepColumns,
  type SweepResults,
  type SweepRow,
  sweepResults,
} from './sweep/row.js';
export { runSweep } from './sweep/run.js';
export { sweepSection } from './sweep/section.js';
export { type BestTilts, bestTilts, type TiltAim, type TiltChoice } from './tilt/best-tilts.js';
export type { EngineTilts, TiltSpan, TriedTilt } from './tilt/engine-tilts.js';
export type { CabinetChoice } from './weigh/cabinet-weights.js';
export type { ChargerSize, ChargerSizes } from './weigh/charger-sizes.js';
export type { EffectWeight } from './weigh/effect-weights.js';
export type { LoadWeight } from './weigh/load-weights.js';
export { type RunningPrices, runningCost, type SiteWeights, weighSite } from './weigh/weigh-site.js';
export { type LeaveOff, type LeftOff, leaveOff, type SpellNeed } from './worst/leave-off.js';
export { figuresOf, type YearFigures, yearFigures } from './year-figures.js';
