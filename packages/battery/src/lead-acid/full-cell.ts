/** Two points of the current that a healthy full cell draws at 25 degC: V, and A per Ah of C10. */
export interface FullCell {
  floatV: number;
  floatRate: number;
  boostV: number;
  boostRate: number;
  /** The straight line through the two points holds up to so much below the final voltage at the ten-hour rate, V. */
  bendBelowFinalV: number;
}

/**
 * Typical currents of healthy full cells, which ventilation is reckoned from: EN 50272-2 / IEC 62485-2, table of the
 * gas-producing currents, from a public copy. Vented cells with under 3 % antimony: 1 mA/Ah at 2.23 V, 4 at 2.40 V, a
 * Tafel slope of 0.28 V a decade. Valve-regulated: 1 mA/Ah at 2.27 V, 8 at 2.40 V; all but a little of it recombines.
 */
export const ventedFullCell: FullCell = {
  floatV: 2.23,
  floatRate: 0.001,
  boostV: 2.4,
  boostRate: 0.004,
  bendBelowFinalV: 0.16,
};
export const sealedFullCell: FullCell = {
  floatV: 2.27,
  floatRate: 0.001,
  boostV: 2.4,
  boostRate: 0.008,
  bendBelowFinalV: 0.24,
};

/** Rate from which Copetti's final voltage holds: that of their charges, 1/h. */
const tenHourRate = 0.1;

/** The current of a full cell doubles for this many K at a voltage: common practice, no source. */
const doublingK = 10;

/**
 * Voltage at the end of a charge, all current making gas, V: (2.45 + 2.011 ln(1 + I/C10)) (1 - 0.002 dT).
 * Copetti, Lorenzo & Chenlo (1993), Progress in Photovoltaics 1, 283-292; dT = T - 25 degC.
 */
export function finalCellV(rate: number, tempC: number): number {
  return (2.45 + 2.011 * Math.log1p(rate)) * (1 - 0.002 * (tempC - 25));
}

/**
 * Voltage at which a full cell takes a current, all of which splits water, V. No cell in charge stands above it.
 *
 * A straight line in the logarithm of the current through the two points. Copetti's final voltage is one of
 * constant-current charges and ends at 2.45 V as the current goes to nothing, so that a charger set to 2.46 V would push
 * ten times what one set to 2.44 V does; it is used from the ten-hour rate on. The line bends towards it below that
 * (vented at 2.48 V, 8 mA/Ah; sealed at 2.40 V): 6 mA/Ah at 2.45 V, where new flooded cells take 0.5-1 A per 100 Ah
 * (common practice). Where it bends is ours.
 *
 * @param rate I/C10, above 0
 */
export function fullCellV(rate: number, tempC: number, cell: FullCell): number {
  if (rate >= tenHourRate) return finalCellV(rate, tempC);
  const efoldV = (cell.boostV - cell.floatV) / Math.log(cell.boostRate / cell.floatRate);
  const floatV = cell.floatV - ((efoldV * Math.LN2) / doublingK) * (tempC - 25);
  const straightV = floatV + efoldV * Math.log(rate / cell.floatRate);
  const bendV = finalCellV(tenHourRate, tempC) - cell.bendBelowFinalV;
  if (straightV <= bendV) return straightV;
  const efoldsToBend = (bendV - floatV) / efoldV;
  const efoldsToFinal = Math.log(tenHourRate / cell.floatRate);
  const part = (Math.log(rate / cell.floatRate) - efoldsToBend) / (efoldsToFinal - efoldsToBend);
  return bendV + part * cell.bendBelowFinalV;
}
