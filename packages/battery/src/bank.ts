import type { ResolvedBank } from './bank-settings.js';
import type { CellTraits } from './cell-traits.js';

/** 0 bulk and absorption, 1 float, 2 equalise. */
export type ChargeStage = 0 | 1 | 2;

/**
 * A battery bank as the hour loop sees it. `s` is the state of charge that a counter of ampere-hours shows when it was
 * told the label: 1 less the charge removed over `refAh`. A slow discharge gives more than a short label says, so `s`
 * may go below 0, where the owner's floor lets it. Currents and powers are those of the whole bank, never negative unless said; temperatures
 * outside -50..60 degC count as the nearer of the two. Functions do not allocate and do not check.
 */
export interface Bank {
  /** What its kind of cell does and does not bear. */
  traits: CellTraits;
  /** Cells in series. */
  cells: number;
  /** The label's capacity less age, Ah: at 25 degC and the label's rate. */
  refAh: number;
  /** Lowest state of charge the owner allows. */
  floor: number;
  /** State of charge that nothing takes the bank below: 0, or a floor below that. */
  lowestState: number;
  /** Energy between full and the floor, Wh. */
  usableWh: number;
  absorptionHours: number;
  /** Current at which absorption may end, A. */
  tailA: number;
  chargeLimitA: number;
  dischargeLimitA: number;
  /** Settings with every default filled in. */
  settings: ResolvedBank;
  /** What an even discharge from full takes out in so many hours at 25 degC, Ah. */
  ampereHoursIn(hours: number): number;
  /** Energy stored, Wh: rest voltage integrated over charge. Continuous, rising, 0 at s = 0. */
  storedWh(s: number): number;
  /** Rest voltage of the bank, V: the slope of `storedWh` over charge. */
  restVoltage(s: number): number;
  /** Current that takes up a charging power at the terminals, A. The terminal voltage is power over current. */
  chargeAmps(powerW: number, s: number, tempC: number): number;
  /** Current that gives a power at the terminals, A; still rising when the power is more than the bank can give. */
  dischargeAmps(powerW: number, s: number, tempC: number): number;
  /** Terminal voltage, V, at a current, positive when charging. Consistent with the two above; not for the hot loop. */
  terminalVoltage(amps: number, s: number, tempC: number): number;
  /** Share of the charge put in that is stored; the rest makes gas (lead-acid), which in sealed cells recombines to heat. */
  chargeEfficiency(s: number, amps: number): number;
  /** Largest charging current the maker allows at a temperature, A. */
  chargeLimitAmps(tempC: number): number;
  /** Largest charging current within that, A, at which the terminals stay at or below the set voltage of the stage. */
  acceptanceAmps(s: number, tempC: number, stage: ChargeStage): number;
  /** Largest discharge current, A, at which the terminals stay at or above the cutoff voltage. */
  dischargeLimitAmps(s: number, tempC: number): number;
  /** Set voltage of a charging stage, temperature-compensated, V. */
  setVoltage(stage: ChargeStage, tempC: number): number;
  /** Self-discharge per hour as a fraction of the charge held, `s` x `refAh`; a bank at or below 0 has none. */
  selfDischargePerHour(tempC: number): number;
  /** Lowest state of charge that can be reached at a temperature and discharge current, below 0 for slow ones. */
  reachableEmpty(tempC: number, amps: number): number;
  /** The higher of the owner's floor and `reachableEmpty`. */
  floorState(tempC: number, amps: number): number;
  /** Freezing point of the electrolyte, degC, never above 0; -Infinity for cells that have none to speak of. */
  freezingC(s: number): number;
  /** Energy that gas carries out, Wh, for charge that made gas, Ah: lost, but not as heat in the cells. */
  gasEnergyWh(gassingAh: number): number;
  /** Water to be filled up, g, for charge that made gas, Ah; 0 for cells that cannot be watered. */
  waterLossGrams(gassingAh: number): number;
}
