export { type AutonomyQuestion, autonomyDays } from './autonomy.js';
export type { Bank, ChargeStage } from './bank.js';
export type { BankSettings, LeadAcidSettings, LithiumSettings, ResolvedBank } from './bank-settings.js';
export { type Cabinet, type CabinetHeater, cabinetStep, checkCabinet, heaterPower } from './cabinet/cabinet.js';
export { type FoamBox, heatCapacityFrom, insulationFrom } from './cabinet/estimates.js';
export { cellLimitsOf, cellsInSeries, setPointOfCell } from './cell-limits.js';
export type { CellKind, CellTraits } from './cell-traits.js';
export {
  type Chemistry,
  type ChemistryDefaults,
  chemistryDefaults,
  type LeadAcidChemistry,
} from './chemistry-defaults.js';
export { createBank } from './create-bank.js';
export {
  capacityByDischargeTime,
  capacityByRate,
  capacityByTemperature,
  type LabelPoint,
  rateWeightOf,
  tenHourAh,
} from './lead-acid/capacity.js';
export { gassingCellV, leadAcidChargeEfficiency } from './lead-acid/charge.js';
export { acidFreezingC, electrolyteDensity } from './lead-acid/freezing.js';
export { finalCellV } from './lead-acid/full-cell.js';
export {
  airWPerKPerM3PerH,
  boostGasMAPerAh,
  floatGasMAPerAh,
  type HydrogenVentilation,
  hydrogenVentilation,
  ventilationOfBank,
} from './lead-acid/hydrogen-ventilation.js';
export { type CyclesAtDepth, checkCycleTable } from './life/cycle-life.js';
export { type RainflowCycle, rainflow } from './life/rainflow.js';
export { ageingSpeed, minerSum, type WearOfYear, wearOfYear } from './life/wear.js';
