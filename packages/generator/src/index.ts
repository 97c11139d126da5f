export { type CompiledGenerator, compileGenerator, type GeneratorPlace } from './compile-generator.js';
export { commonDerating, type Derating, deratedShare } from './derating.js';
export { type EngineUse, engineUse } from './engine-use.js';
export type { Exercise } from './exercise.js';
export {
  type FuelLine,
  fuelFromEfficiency,
  fuelLine,
  fuelLPerH,
  type GeneratorFuel,
  usualDieselFuel,
} from './fuel-line.js';
export { type FuelKind, type FuelProperties, fuelProperties } from './fuels.js';
export type { HoursAccepted } from './hours-accepted.js';
export type { LookAhead } from './look-ahead.js';
export type { GeneratorOutput, GeneratorSettings, ServiceInterval, StopRule } from './settings.js';
export { type StartFailure, startFails } from './start-failure.js';
export type { StartRule } from './start-threshold.js';
export { type Underload, underload, wetRunningCaution } from './underload.js';
