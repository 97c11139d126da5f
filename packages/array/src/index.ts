export { type ArrayChain, arrayChain, type ChainLoss, extendChain, type PlaneLight } from './array-chain.js';
export { type CellCooling, cellTemperatureYear, noctCellC, windCellC } from './cell-temperature.js';
export { coldVoltageFactor } from './cold-voltage.js';
export { runningConductorC } from './conductor-temperature.js';
export { awgAreaMm2, awgDiameterMm, type Cable, cableOhm, conductorOhmPerM } from './conductors.js';
export {
  type Controller,
  clippedPower,
  type DirectController,
  type EfficiencyCurve,
  type MaximumPowerController,
} from './controller.js';
export {
  busPowerW,
  type ControllerLosses,
  type ControllerYear,
  controllerLosses,
  controllerYear,
} from './controller-year.js';
export { type DcYear, dcYear } from './dc-year.js';
export { electricalLimits, type Limit, type LimitCode, type LimitsInput, limitsNotice } from './electrical-limits.js';
export type { ModuleSheet } from './module-sheet.js';
export { currentAt, maximumPower, openCircuitVoltage } from './operating-point.js';
export { powerCoefficient } from './power-coefficient.js';
export { solveModule } from './solve-module.js';
export type { ModuleParameters } from './translation.js';
export type { VoltageGrid } from './voltage-grid.js';
export type { ArrayYearInput } from './wiring.js';
