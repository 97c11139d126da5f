export type { CabinetChoice } from './cabinet-weights.js';
export type { ChargerSize, ChargerSizes } from './charger-sizes.js';
export type { EffectWeight } from './effect-weights.js';
export type { LoadWeight } from './load-weights.js';
export type { Outcome, Weight } from './outcome.js';
export { type Rerun, rerunOf } from './rerun.js';
export { type NamedResult, reasonRuns, type VariantReasons, variantReasons } from './variant-reasons.js';
export { type SiteWeights, weighSite } from './weigh-site.js';
