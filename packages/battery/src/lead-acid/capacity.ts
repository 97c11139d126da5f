import { mustBeAbove, mustLie, OutOfRangeError } from '@wintergap/ground';

/**
 * Lead-acid capacity by rate and temperature.
 *
 * Copetti, Lorenzo & Chenlo (1993), Progress in Photovoltaics 1, 283-292:
 *   C / C10 = 1.67 / (1 + 0.67 (I/I10)^0.9) (1 + 0.005 (T - 25 degC))
 * C10 is the ten-hour capacity at 25 degC and I10 = C10 / 10 h. From memory; one print omits the exponent 0.9.
 *
 * The 0.67, which stands twice, is what rate weighs: here `rateWeight`, so that a bank with two points on its label
 * can have its own. The larger it is, the more a slow discharge gives and the less a fast one.
 */
export const copettiRateWeight = 0.67;
const rateExponent = 0.9;

/** Range in which two points of a label are believed: C100/C10 from 1.02 to 2. */
const leastRateWeight = 0.02;
const mostRateWeight = 2;

/** Smallest temperature factor, reached only below -155 degC; keeps the capacity positive whatever comes in. */
const leastTemperatureFactor = 0.1;

/** Capacity on a label, and the time in which an even discharge takes it out. */
export interface LabelPoint {
  capacityAh: number;
  atRateH: number;
}

/** Capacity at rate I/I10 over C10, at 25 degC: 1.67 at rest for the printed weight, 1 at the ten-hour rate. */
export function capacityByRate(timesI10: number, rateWeight: number = copettiRateWeight): number {
  return (1 + rateWeight) / (1 + rateWeight * Math.max(0, timesI10) ** rateExponent);
}

/** Capacity at a temperature over the capacity at 25 degC. */
export function capacityByTemperature(tempC: number): number {
  return Math.max(leastTemperatureFactor, 1 + 0.005 * (tempC - 25));
}

/**
 * Capacity to empty in `rateH` hours over C10, at 25 degC: the q that solves q = capacityByRate(10 q / rateH),
 * since a bank of q C10 emptied in rateH hours is emptied at q C10 / rateH amperes.
 */
export function capacityByDischargeTime(rateH: number, rateWeight: number = copettiRateWeight): number {
  let low = 0;
  let high = 1 + rateWeight;
  for (let k = 0; k < 60; k++) {
    const q = (low + high) / 2;
    if (q < capacityByRate((10 * q) / rateH, rateWeight)) low = q;
    else high = q;
  }
  return (low + high) / 2;
}

/** Ten-hour capacity, Ah, of a bank labelled `capacityAh` at the `atRateH` hour rate. */
export function tenHourAh(capacityAh: number, atRateH: number, rateWeight: number = copettiRateWeight): number {
  return capacityAh / capacityByDischargeTime(atRateH, rateWeight);
}

/**
 * The rate weight with which both points of a label hold.
 *
 * @throws OutOfRangeError when a longer discharge does not give more, or more than lead-acid cells can
 */
export function rateWeightOf(one: LabelPoint, other: LabelPoint): number {
  mustBeAbove('capacityAh of a label', Math.min(one.capacityAh, other.capacityAh), 0);
  mustLie('atRateH of a label', Math.min(one.atRateH, other.atRateH), 0.25, 500);
  const [fast, slow] = one.atRateH < other.atRateH ? [one, other] : [other, one];
  const ratio = slow.capacityAh / fast.capacityAh;
  const ratioAt = (rateWeight: number) =>
    capacityByDischargeTime(slow.atRateH, rateWeight) / capacityByDischargeTime(fast.atRateH, rateWeight);
  const least = ratioAt(leastRateWeight);
  const most = ratioAt(mostRateWeight);
  if (!(slow.atRateH > fast.atRateH && ratio >= least && ratio <= most)) {
    throw new OutOfRangeError(
      `the label's capacity at ${slow.atRateH} h must be ${least.toFixed(2)} to ${most.toFixed(2)} times that at ${fast.atRateH} h, ` +
        `got ${slow.capacityAh} Ah and ${fast.capacityAh} Ah`,
      'capacity',
    );
  }
  let low = leastRateWeight;
  let high = mostRateWeight;
  for (let k = 0; k < 50; k++) {
    const rateWeight = (low + high) / 2;
    if (ratioAt(rateWeight) < ratio) low = rateWeight;
    else high = rateWeight;
  }
  return (low + high) / 2;
}
