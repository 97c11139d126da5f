import type { ControllerYear } from '@wintergap/array';
import type { Bank, Cabinet, CabinetHeater } from '@wintergap/battery';
import type { CompiledGenerator } from '@wintergap/generator';
import type { Inverter } from '@wintergap/loads';
import type { ChargingRules } from './charging.js';

/** One array with its controller, as the bus sees it. */
export interface BusSource {
  name: string;
  controller: ControllerYear;
  /** Largest current into the bus, A. */
  maxCurrentA: number;
}

/** Everything the hourly balance needs, with all that does not depend on the bank computed beforehand. */
export interface Plant {
  sources: readonly BusSource[];
  /** AC loads, W, mean of the hour. */
  acW: Float64Array;
  /** DC loads at their terminals, W. */
  dcW: Float64Array;
  /** What the AC loads draw from the DC bus when the inverter carries them, idle included, W. */
  inverterInputW: Float64Array;
  /** What the DC loads draw from the bus, converter losses included, W. */
  converterInputW: Float64Array;
  /** Tracker drives and controllers' night draw, W on the DC bus. */
  ownUseW: Float64Array;
  /** `null` when there is none: AC loads are then carried by an AC engine only. */
  inverter: Inverter | null;
  /** Most AC power the inverter gives, W; 0 without one. Load above it stays dark. */
  inverterLimitW: number;
  chargeRules: ChargingRules;
  bank: Bank;
  cabinet: Cabinet;
  heater: CabinetHeater | null;
  /** Air around the cabinet, or around a bank without one, degC. */
  aroundC: Float64Array;
  generator: CompiledGenerator | null;
}
