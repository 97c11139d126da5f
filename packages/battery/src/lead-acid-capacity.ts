/**
 * Lead-acid capacity by rate and temperature.
 *
 * Copetti, Lorenzo & Chenlo (1993), Progress in Photovoltaics 1, 283-292:
 *   C / C10 = 1.67 / (1 + 0.67 (I/I10)^0.9) (1 + 0.005 (T - 25 degC))
 * C10 is the ten-hour capacity at 25 degC and I10 = C10 / 10 h. From memory; one print omits the exponent 0.9.
 */

/** Smallest temperature factor, reached only below -155 degC; keeps the capacity positive whatever comes in. */
const leastTemperatureFactor = 0.1;

/** Capacity at rate I/I10 over C10, at 25 degC: 1.67 at rest, 1 at the ten-hour rate. */
export function capacityByRate(timesI10: number): number {
  return 1.67 / (1 + 0.67 * Math.max(0, timesI10) ** 0.9);
}

/** Capacity at a temperature over the capacity at 25 degC. */
export function capacityByTemperature(tempC: number): number {
  return Math.max(leastTemperatureFactor, 1 + 0.005 * (tempC - 25));
}

/**
 * Capacity to empty in `rateH` hours over C10, at 25 degC: the q that solves q = capacityByRate(10 q / rateH),
 * since a bank of q C10 emptied in rateH hours is emptied at q C10 / rateH amperes.
 */
export function capacityByDischargeTime(rateH: number): number {
  let low = 0;
  let high = 1.67;
  for (let k = 0; k < 60; k++) {
    const q = (low + high) / 2;
    if (q < capacityByRate((10 * q) / rateH)) low = q;
    else high = q;
  }
  return (low + high) / 2;
}

/** Ten-hour capacity, Ah, of a bank labelled `capacityAh` at the `atRateH` hour rate. */
export function tenHourAh(capacityAh: number, atRateH: number): number {
  return capacityAh / capacityByDischargeTime(atRateH);
}
