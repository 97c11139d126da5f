import type { Bank } from './bank.js';

export interface AutonomyQuestion {
  /** Mean power drawn from the bank, W, converter losses included. */
  averageLoadW: number;
  /** Bank temperature, degC. */
  tempC: number;
  /** State of charge at the start; full if not given. */
  fromState?: number | undefined;
  /** Lowest state of charge; the bank's own floor if not given. */
  floor?: number | undefined;
}

const steps = 500;

/**
 * Days the bank carries a load with no sun and no engine, down to the floor or to what cold and rate leave reachable,
 * whichever comes first, and no further than the voltage holds above the cutoff.
 *
 * Integrates equal steps of charge: the voltage sags as the bank empties, so a constant power draws ever more current.
 * Self-discharge counts. Infinity only when neither load nor self-discharge takes anything.
 *
 * @throws RangeError for a load, state or floor out of range
 */
export function autonomyDays(bank: Bank, question: AutonomyQuestion): number {
  const { averageLoadW, tempC, fromState = 1, floor = bank.floor } = question;
  if (!(averageLoadW >= 0 && averageLoadW < 1e9)) {
    throw new RangeError(`averageLoadW must be 0 or more, got ${averageLoadW}`);
  }
  if (!(tempC > -100 && tempC < 100)) throw new RangeError(`tempC must be -100 to 100, got ${tempC}`);
  if (!(fromState >= 0 && fromState <= 1)) throw new RangeError(`fromState must be 0 to 1, got ${fromState}`);
  if (!(floor >= 0 && floor <= 1)) throw new RangeError(`floor must be 0 to 1, got ${floor}`);
  const step = (fromState - floor) / steps;
  if (!(step > 0)) return 0;
  const selfA = bank.selfDischargePerHour(tempC) * bank.refAh;
  let hours = 0;
  for (let k = 0; k < steps; k++) {
    const s = fromState - (k + 0.5) * step;
    const amps = bank.dischargeAmps(averageLoadW, s, tempC);
    if (amps > bank.dischargeLimitAmps(s, tempC) || s < bank.reachableEmpty(tempC, amps)) break;
    hours += (step * bank.refAh) / (amps + selfA);
  }
  return hours / 24;
}
