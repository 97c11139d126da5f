import { mustLie } from '@wintergap/ground';
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
 * @throws OutOfRangeError for a load, state or floor out of range
 */
export function autonomyDays(bank: Bank, question: AutonomyQuestion): number {
  const { averageLoadW, tempC, fromState = 1, floor = bank.floor } = question;
  mustLie('averageLoadW', averageLoadW, 0, 1e9);
  mustLie('tempC', tempC, -100, 100);
  mustLie('fromState', fromState, bank.lowestState, 1);
  mustLie('floor', floor, bank.lowestState, 1);
  const step = (fromState - floor) / steps;
  if (!(step > 0)) return 0;
  const selfPerHour = bank.selfDischargePerHour(tempC);
  let hours = 0;
  for (let k = 0; k < steps; k++) {
    const s = fromState - (k + 0.5) * step;
    const amps = bank.dischargeAmps(averageLoadW, s, tempC);
    if (amps > bank.dischargeLimitAmps(s, tempC) || s < bank.reachableEmpty(tempC, amps)) break;
    hours += (step * bank.refAh) / (amps + selfPerHour * Math.max(s, 0) * bank.refAh);
  }
  return hours / 24;
}
