import { capacityByRate, capacityByTemperature } from './capacity.js';

/** Lowest corrected state put into 0.27/SOC^1.5, which has no end at an empty cell. */
const leastState = 0.01;

/**
 * Voltage of a rested cell on the discharge side, V: the straight line of Copetti et al. (1993).
 *
 * @param s 1 less the charge removed over C10, as in all of the printed equations; below 0 in slow discharges
 */
export function restCellV(s: number): number {
  return 2.085 - 0.12 * (1 - s);
}

/** What the voltage of a discharging cell needs to know about one current and temperature. */
export interface Discharge {
  /** Drop over the cell apart from 0.27/SOC^1.5, V. */
  plainDropV: number;
  /** Factor of 1/SOC^1.5, V. */
  steepDropV: number;
  /** C10 over the capacity at this rate and temperature. */
  refOverCapacity: number;
}

/**
 * Prepares `dischargeCellV` for a rate (I/C10, 1/h) and temperature, so that a scan over states is cheap.
 *
 * @param resistanceFactor internal drop against the flooded cells of the equations
 * @param rateWeight see `capacityByRate`
 */
export function discharge(rate: number, tempC: number, resistanceFactor: number, rateWeight?: number): Discharge {
  const scale = rate * (1 - 0.007 * (tempC - 25)) * resistanceFactor;
  return {
    plainDropV: scale * (4 / (1 + (100 * rate) ** 1.3) + 0.02),
    steepDropV: scale * 0.27,
    refOverCapacity: 1 / (capacityByRate(10 * rate, rateWeight) * capacityByTemperature(tempC)),
  };
}

/**
 * Terminal voltage of a cell in discharge, V, never below 0.
 *
 * Copetti, Lorenzo & Chenlo (1993), from memory (one print has SOC^1.2):
 *   V = 2.085 - 0.12 (1 - SOC) - (I/C10) (4/(1 + I^1.3) + 0.27/SOC^1.5 + 0.02) (1 - 0.007 (T - 25 degC))
 * with SOC = 1 - Q / C(T, I), Q the charge removed: below `s` where cold or a high rate shrinks the capacity, above
 * it where a low rate stretches it.
 *
 * Two readings of ours. The I in 4/(1 + I^1.3) is in amperes of the cells they measured; here it is the current of
 * a 100 Ah cell run at the same rate, so that a bank of 1000 Ah cells and one of 100 Ah cells behave alike. And the
 * rest term uses the lower of `s` and the corrected state: the line of `s` is what the stored energy is counted by,
 * so a discharge can lose energy but never make any.
 */
export function dischargeCellV(s: number, at: Discharge): number {
  const state = 1 - (1 - s) * at.refOverCapacity;
  const bounded = Math.max(leastState, state);
  const restV = restCellV(Math.min(s, Math.max(Math.min(s, 0), state)));
  return Math.max(0, restV - at.plainDropV - at.steepDropV / (bounded * Math.sqrt(bounded)));
}
