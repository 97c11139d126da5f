import { createLedger, type Ledger } from '@wintergap/tally';
import { createPlantState, runYear } from './balance.js';
import type { Plant } from './plant.js';

/** A year that has been run until it repeats itself. */
export interface SettledYear {
  ledger: Ledger;
  /** How many years it took; `null` when it still differed after the most that are tried. */
  settledAfterYears: number | null;
}

/** Most years that are run. A bank that carries charge for longer than this is not a bank but a seasonal store. */
const mostYears = 12;
/** A year ends as it began when the state of charge agrees to this and the bank's temperature to 1000 times it, K. */
const sameState = 1e-6;

/** Runs the year again until the bank ends it as it began it. */
export function settle(plant: Plant, stateOfCharge = 0.8): SettledYear {
  const ledger = createLedger();
  const state = createPlantState(plant, stateOfCharge);
  for (let year = 1; year <= mostYears; year++) {
    const before = state.stateOfCharge;
    const beforeC = state.bankC;
    runYear(plant, state, ledger);
    const moved = Math.abs(state.stateOfCharge - before);
    if (moved < sameState && Math.abs(state.bankC - beforeC) < 1000 * sameState)
      return { ledger, settledAfterYears: year };
  }
  return { ledger, settledAfterYears: null };
}
