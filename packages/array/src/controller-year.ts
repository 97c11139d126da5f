import { OutOfRangeError } from '@wintergap/ground';
import { type Controller, checkController, defaultMarginV, readCurve } from './controller.js';
import { type DcYear, dcYear } from './dc-year.js';
import { openCircuitVoltage } from './operating-point.js';
import { gridCurrentA, type VoltageGrid, voltageGridYear } from './voltage-grid.js';
import type { ArrayYearInput } from './wiring.js';

/** One array with its controller, prepared for the hourly balance: `busPowerW` reads it without allocating. */
export interface ControllerYear {
  controller: Controller;
  /** The array at maximum power, at the controller's array terminals. */
  dc: DcYear;
  /** Currents at the voltages the bank can hold the array at, in the hours in which it may; null where it never does. */
  grid: VoltageGrid | null;
  direct: boolean;
  /** 1 in hours in which the controller is awake, else 0. */
  awake: Uint8Array;
  /** Array voltage needed above the bank's, V. */
  marginV: number;
  /** Current to which the efficiency curve's load fraction refers, A. */
  ratedA: number;
  loadFraction: Float64Array;
  efficiency: Float64Array;
}

/**
 * Prepares an array and its controller for a bank whose voltage stays within `lowestBankV` to `highestBankV`.
 *
 * @param dc the result of `dcYear(input)` where it is at hand already
 */
export function controllerYear(
  input: ArrayYearInput,
  controller: Controller,
  lowestBankV: number,
  highestBankV: number,
  dc: DcYear = dcYear(input),
): ControllerYear {
  checkController(controller);
  const n = input.effectiveWm2.length;
  const awake = new Uint8Array(n).fill(1);
  if (controller.kind === 'direct') {
    const one = Float64Array.of(1);
    const grid = voltageGridYear(input, lowestBankV, highestBankV);
    return { controller, dc, grid, direct: true, awake, marginV: 0, ratedA: 1, loadFraction: one, efficiency: one };
  }

  const marginV = controller.minVoltageAboveBankV ?? defaultMarginV;
  const startV = controller.startVoltageV ?? 0;
  const isHeld = new Uint8Array(n);
  for (let h = 0; h < n; h++) {
    const lit = dc.litWm2[h]!;
    if (lit === 0) continue;
    if (startV > 0 && openCircuitVoltage(input.parameters, lit, input.cellC[h]!) * input.inSeries < startV)
      awake[h] = 0;
    else if (dc.voltageV[h]! < highestBankV + marginV) isHeld[h] = 1;
  }
  const { efficiency } = controller;
  const flat = typeof efficiency === 'number';
  return {
    controller,
    dc,
    grid: isHeld.includes(1)
      ? voltageGridYear(input, lowestBankV + marginV, highestBankV + marginV, undefined, isHeld)
      : null,
    direct: false,
    awake,
    marginV,
    ratedA: controller.maxCurrentA,
    loadFraction: Float64Array.from(flat ? [1] : efficiency.loadFraction),
    efficiency: Float64Array.from(flat ? [efficiency] : efficiency.efficiency),
  };
}

/**
 * Power the array gives into the controller, W. A maximum-power controller takes the maximum while that lies at
 * least its margin above the bank; a hotter or dimmer array is held at bank voltage plus margin, as by a closed
 * switch. A direct controller holds it at the bank voltage always.
 */
export function arrayInputW(year: ControllerYear, hour: number, bankV: number): number {
  if (year.awake[hour] === 0) return 0;
  const heldV = bankV + year.marginV;
  if (year.grid === null || year.grid.rowOf[hour]! < 0) return year.dc.powerW[hour]!;
  if (!year.direct && year.dc.voltageV[hour]! >= heldV) return year.dc.powerW[hour]!;
  return heldV * gridCurrentA(year.grid, hour, heldV);
}

/** Power offered to the bus before the current limit, W; `clippedPower` applies the limit. */
export function busPowerW(year: ControllerYear, hour: number, bankV: number): number {
  const inputW = arrayInputW(year, hour, bankV);
  if (year.direct) return inputW;
  return inputW * readCurve(year.loadFraction, year.efficiency, inputW / (year.ratedA * bankV));
}

/** Where the array's maximum power went at the controller, hourly, W: dc power = held away + conversion + bus. */
export interface ControllerLosses {
  /** Not taken because the bank held the array off its best voltage, or the controller slept. */
  heldAwayW: Float64Array;
  conversionW: Float64Array;
  busW: Float64Array;
}

/** The controller's losses at the bank voltages of a finished year. */
export function controllerLosses(year: ControllerYear, bankV: Float64Array): ControllerLosses {
  const n = year.dc.powerW.length;
  if (bankV.length !== n) throw new OutOfRangeError(`bankV must have ${n} hours, got ${bankV.length}`);
  const heldAwayW = new Float64Array(n);
  const conversionW = new Float64Array(n);
  const busW = new Float64Array(n);
  for (let h = 0; h < n; h++) {
    const inputW = arrayInputW(year, h, bankV[h]!);
    busW[h] = busPowerW(year, h, bankV[h]!);
    heldAwayW[h] = year.dc.powerW[h]! - inputW;
    conversionW[h] = inputW - busW[h]!;
  }
  return { heldAwayW, conversionW, busW };
}
