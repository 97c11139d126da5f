import { ampacityHintA } from './conductors.js';

/** Conductor temperature and air at which the ampacities of `ampacityHintA` hold, degC. */
const atAmpacityC = 75;
const airOfAmpacityC = 30;

const referenceWm2 = 1000;

/**
 * Temperature to count an array's cable at, degC: one value for the year that loses what the hours would lose each at
 * their own temperature. Copper is as warm as the air plus a rise with the square of the current, the one that the
 * ampacity table is built on (75 degC at its current in air of 30 degC; from memory). The current follows the light, and
 * loss is its square, so hours count by the square of their light. Sun on the cable itself is left out.
 *
 * @param ratedA current of the array at 1000 W/m2
 * @returns the air's mean without any light
 */
export function runningConductorC(
  effectiveWm2: Float64Array,
  airC: Float64Array,
  ratedA: number,
  areaMm2: number,
): number {
  const loading = ratedA / ampacityHintA(areaMm2) / referenceWm2;
  let sum = 0;
  let weights = 0;
  let airSum = 0;
  for (let h = 0; h < airC.length; h++) {
    const light = effectiveWm2[h]!;
    const rise = (atAmpacityC - airOfAmpacityC) * (loading * light) ** 2;
    sum += light * light * (airC[h]! + rise);
    weights += light * light;
    airSum += airC[h]!;
  }
  return Math.min(weights > 0 ? sum / weights : airSum / airC.length, hottestC);
}

/** No cable is let get hotter: one so thin is the business of the electrical limits. */
const hottestC = 120;
