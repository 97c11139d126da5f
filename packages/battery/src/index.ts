export { type AutonomyQuestion, autonomyDays } from './autonomy.js';
export type { Bank, ChargeStage } from './bank.js';
export type { BankSettings, LeadAcidSettings, LithiumSettings, ResolvedBank } from './bank-settings.js';
export { type Cabinet, type CabinetHeater, cabinetStep, checkCabinet, heaterPower } from './cabinet.js';
export { type FoamBox, heatCapacityFrom, insulationFrom } from './cabinet-estimates.js';
export { cellLimitsOf, cellsInSeries, setPointOfCell } from './cell-limits.js';
export {
  type Chemistry,
  type ChemistryDefaults,
  chemistryDefaults,
  type LeadAcidChemistry,
} from './chemistry-defaults.js';
export { createBank } from './create-bank.js';
export { type CyclesAtDepth, checkCycleTable } from './cycle-life.js';
export { acidFreezingC, electrolyteDensity } from './freezing.js';
export { finalCellV } from './full-cell.js';
export {
  airWPerKPerM3PerH,
  boostGasMAPerAh,
  floatGasMAPerAh,
  type HydrogenVentilation,
  hydrogenVentilation,
  ventilationOfBank,
} from './hydrogen-ventilation.js';
export {
  capacityByDischargeTime,
  capacityByRate,
  capacityByTemperature,
  type LabelPoint,
  rateWeightOf,
  tenHourAh,
} from './lead-acid-capacity.js';
export { gassingCellV, leadAcidChargeEfficiency } from './lead-acid-charge.js';
export { type RainflowCycle, rainflow } from './rainflow.js';
export { ageingSpeed, minerSum, type WearOfYear, wearOfYear } from './wear.js';
