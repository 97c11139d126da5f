import { restCellV } from './discharge.js';
import { type FullCell, fullCellV } from './full-cell.js';

/**
 * Lead-acid voltage and charge efficiency while charging, per 2 V cell.
 * Copetti, Lorenzo & Chenlo (1993), Progress in Photovoltaics 1, 283-292; `rate` is I/C10 in 1/h, dT = T - 25 degC.
 */

/** Smallest factor of temperature on the drop, reached at 61 degC; the printed one passes zero at 65 degC. */
const leastTemperatureFactor = 0.1;

/** Decay of the efficiency exponent: 20.73 / (I/I10 + 0.55). */
function efficiencySlope(rate: number): number {
  return 20.73 / (10 * rate + 0.55);
}

/** Share of the charge put in that is stored: 1 - exp(20.73 (SOC - 1) / (I/I10 + 0.55)). The rest makes gas. */
export function leadAcidChargeEfficiency(rate: number, s: number): number {
  return -Math.expm1(-efficiencySlope(rate) * (1 - s));
}

/** Voltage where gassing begins, V: (2.24 + 1.97 ln(1 + I/C10)) (1 - 0.002 dT). */
export function gassingCellV(rate: number, tempC: number): number {
  return (2.24 + 1.97 * Math.log1p(rate)) * (1 - 0.002 * (tempC - 25));
}

/**
 * Time constant of the rise from gassing to final voltage, h: 17.3 / (1 + 852 (I/C10)^1.67).
 *
 * Another print reads 1.73. At the ten-hour rate the two give 54 and 5.4 minutes. A flooded cell charged at C/10
 * climbs from about 2.4 V to about 2.6 V over roughly two hours before its voltage stands still (three constant
 * readings an hour apart are the usual sign of a full cell), which is two time constants of the first and
 * twenty of the second. 17.3 is used.
 */
export function overchargeTimeConstantH(rate: number): number {
  return 17.3 / (1 + 852 * rate ** 1.67);
}

/** How a kind of cell differs from the flooded cells of the equations. */
export interface ChargedCell {
  /** Internal drop against theirs. */
  resistanceFactor: number;
  /** Factor of the efficiency's exponent: above 1 a cell takes its charge without gassing until nearer to full. */
  efficiencyFactor: number;
  full: FullCell;
}

/** What the voltage of an overcharged cell needs to know about one current and temperature. */
export interface Overcharge {
  gassingV: number;
  /** That of a full cell, see `fullCellV`. */
  fullV: number;
  timeConstantH: number;
  /** Drop over the cell apart from 0.48/(1 - SOC)^1.2, V. */
  plainDropV: number;
  /** Factor of 1/(1 - SOC)^1.2, V. */
  steepDropV: number;
  /** ln(exp(a y) - 1) where y = 1 - SOC at the onset of gassing, a = efficiencySlope. */
  onsetLog: number;
  /** Efficiency slope a. */
  slope: number;
}

/** ln(exp(x) - 1) for x > 0, -Infinity at 0. */
function logExpm1(x: number): number {
  return x > 30 ? x : Math.log(Math.expm1(x));
}

/** Prepares `chargeCellV` for a rate (above 0) and temperature, so that a scan over states is cheap. */
export function overcharge(rate: number, tempC: number, cell: ChargedCell): Overcharge {
  const gassingV = gassingCellV(rate, tempC);
  const scale = rate * Math.max(leastTemperatureFactor, 1 - 0.025 * (tempC - 25)) * cell.resistanceFactor;
  const plainDropV = scale * (6 / (1 + (100 * rate) ** 0.86) + 0.036);
  const steepDropV = scale * 0.48;
  // Onset of gassing: y in (0, 1] where 2 + 0.16 (1 - y) + plain + steep / y^1.2 = gassingV. Falls with y, so bisect.
  let low = 0;
  let high = 1;
  for (let k = 0; k < 30; k++) {
    const y = (low + high) / 2;
    if (2.16 - 0.16 * y + plainDropV + steepDropV / y ** 1.2 > gassingV) low = y;
    else high = y;
  }
  const slope = cell.efficiencyFactor * efficiencySlope(rate);
  return {
    gassingV,
    fullV: fullCellV(rate, tempC, cell.full),
    timeConstantH: overchargeTimeConstantH(rate),
    plainDropV,
    steepDropV,
    onsetLog: logExpm1(slope * high),
    slope,
  };
}

/**
 * Terminal voltage of a cell in charge, V.
 *
 * Before gassing: V = 2 + 0.16 SOC + (I/C10) (6/(1 + I^0.86) + 0.48/(1 - SOC)^1.2 + 0.036) (1 - 0.025 dT).
 * Above the gassing voltage: V = Vg + (Vec - Vg) (1 - exp(-t / tau)).
 * The I in 6/(1 + I^0.86) is the current of a 100 Ah cell at the same rate (see `dischargeCellV`).
 *
 * The time t since gassing began is made a function of the state, so that no clock has to be carried: at constant
 * current, t = (C10/I) times the integral of dSOC / efficiency from the onset of gassing, which with the
 * charge efficiency above is (C10/I)/a ln((exp(a y0) - 1)/(exp(a y) - 1)), y = 1 - SOC. A constant-current charge
 * thus follows the paper. What differs: the final voltage Vec is that of `fullCellV`, Copetti's own from the ten-hour
 * rate on. Three bounds of ours: while gassing the cell stands no higher than the first equation would have it (with
 * trickle currents or in hot cells the second would jump ahead of it), it never stands above a full cell, which takes
 * all of the current as gas, and never below its rest voltage.
 *
 * @param rate above 0
 * @param at `overcharge` of the same rate and temperature
 */
export function chargeCellV(rate: number, s: number, at: Overcharge): number {
  const y = 1 - s;
  let v = 2 + 0.16 * s + at.plainDropV + at.steepDropV / y ** 1.2;
  if (v > at.gassingV && at.fullV > at.gassingV) {
    const hours = Math.max(0, (at.onsetLog - logExpm1(at.slope * y)) / (rate * at.slope));
    v = Math.min(v, at.gassingV - (at.fullV - at.gassingV) * Math.expm1(-hours / at.timeConstantH));
  }
  return Math.max(restCellV(s), Math.min(v, at.fullV));
}
