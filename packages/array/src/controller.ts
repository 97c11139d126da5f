import { OutOfRangeError } from '@wintergap/ground';
/** A charge controller between array and bank. Its absorption voltage and temperature compensation belong to the bank. */
export type Controller = MaximumPowerController | DirectController;

/** Holds the array at its best voltage and steps the voltage down to the bank's. */
export interface MaximumPowerController {
  kind: 'maximum-power';
  /** Highest array voltage it survives, V. */
  maxVoltageV: number;
  /** Limit of the current into the bank, A. */
  maxCurrentA: number;
  efficiency: number | EfficiencyCurve;
  /** Array voltage it needs above the bank's to step down, V. Left out: 1. */
  minVoltageAboveBankV?: number;
  /** Draw while the array is dark, W. */
  nightDrawW: number;
  /** Open-circuit array voltage at which it wakes, V. Left out: it wakes with the first light. */
  startVoltageV?: number;
}

/** Connects the array straight to the bank, which sets the array's voltage. */
export interface DirectController {
  kind: 'direct';
  maxCurrentA?: number;
  /** Highest array voltage it survives, V. */
  maxVoltageV?: number;
  nightDrawW: number;
}

/** Efficiency over load, the array power as a share of maxCurrentA x bank voltage; straight between the points. */
export interface EfficiencyCurve {
  loadFraction: readonly number[];
  efficiency: readonly number[];
}

/** Common practice, no source: a step-down converter keeps running with about 1 V to spare. */
export const defaultMarginV = 1;

/** Throws a RangeError naming the value that no controller has. */
export function checkController(controller: Controller): void {
  atLeast(controller.nightDrawW, 'nightDrawW', 0);
  if (controller.maxCurrentA !== undefined) atLeast(controller.maxCurrentA, 'maxCurrentA', 0.1);
  if (controller.maxVoltageV !== undefined) atLeast(controller.maxVoltageV, 'maxVoltageV', 1);
  if (controller.kind === 'direct') return;
  atLeast(controller.minVoltageAboveBankV ?? 0, 'minVoltageAboveBankV', 0);
  atLeast(controller.startVoltageV ?? 0, 'startVoltageV', 0);
  const { efficiency } = controller;
  if (typeof efficiency === 'number') {
    checkEfficiency(efficiency);
    return;
  }
  const { loadFraction } = efficiency;
  if (loadFraction.length < 1 || loadFraction.length !== efficiency.efficiency.length) {
    throw new OutOfRangeError(
      `loadFraction and efficiency must have one length from 1, got ${loadFraction.length} and ${efficiency.efficiency.length}`,
    );
  }
  for (const share of efficiency.efficiency) checkEfficiency(share);
  for (let k = 0; k < loadFraction.length; k++) {
    if (!(loadFraction[k]! >= 0 && loadFraction[k]! <= 1 && (k === 0 || loadFraction[k]! > loadFraction[k - 1]!))) {
      throw new OutOfRangeError(`loadFraction must rise within 0 to 1, got ${loadFraction.join(', ')}`);
    }
  }
}

function checkEfficiency(value: number): void {
  if (!(value > 0 && value <= 1)) throw new OutOfRangeError(`efficiency must be above 0 and up to 1, got ${value}`);
}

function atLeast(value: number, name: string, least: number): void {
  if (!(value >= least && Number.isFinite(value)))
    throw new OutOfRangeError(`${name} must be ${least} or more, got ${value}`);
}

/** Power that passes a limit on the current into the bank, W. */
export function clippedPower(powerW: number, bankV: number, maxCurrentA: number): number {
  return Math.min(powerW, bankV * maxCurrentA);
}

/** Straight-line reading of a curve with rising `x`; beyond its ends the end value. */
export function readCurve(x: Float64Array, y: Float64Array, at: number): number {
  const last = x.length - 1;
  if (last === 0 || at <= x[0]!) return y[0]!;
  if (at >= x[last]!) return y[last]!;
  let k = 0;
  while (x[k + 1]! < at) k++;
  return y[k]! + ((y[k + 1]! - y[k]!) * (at - x[k]!)) / (x[k + 1]! - x[k]!);
}
