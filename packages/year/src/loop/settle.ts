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
/** A year ends as it began when the state of charge and the bank's temperature agree to these. */
const sameCharge = 1e-6;
const sameK = 0.01;
/**
 * What may remain when the years run out: engine runs that fall now this way and now that leave a few watt-hours for ever,
 * and no figure of the year shows a thousandth of the bank.
 */
const alikeCharge = 1e-3;
const alikeK = 0.5;

/**
 * Hour of the year at which the run-up begins: 1 September. A bank that was full at any time between then and New Year
 * has forgotten how it began, and one year then settles it.
 */
const runUpFromHour = 5832;

/**
 * Runs up to New Year from a full bank in autumn, then the year again until the bank ends it as it began it, or as it began
 * one of the years before: an engine carries a run over New Year every other time, and the years then go in turn for ever.
 * An engine that fails to start fails in each year at the same attempts.
 *
 * @param ledger filled anew
 */
export function settle(plant: Plant, ledger: Ledger = createLedger()): SettledYear {
  const state = createPlantState(plant, 1);
  runYear(plant, state, ledger, runUpFromHour);
  const begun: { charge: number; bankC: number }[] = [];
  const endsAs = (year: number, charge: number, kelvin: number) => {
    const { charge: atStart, bankC } = begun[year - 1]!;
    return Math.abs(state.stateOfCharge - atStart) < charge && Math.abs(state.bankC - bankC) < kelvin;
  };
  for (let year = 1; year <= mostYears; year++) {
    begun.push({ charge: state.stateOfCharge, bankC: state.bankC });
    state.engine.attempts = 0;
    runYear(plant, state, ledger);
    for (let earlier = year; earlier >= 1; earlier--) {
      if (endsAs(earlier, sameCharge, sameK)) return { ledger, settledAfterYears: year };
    }
  }
  return { ledger, settledAfterYears: endsAs(mostYears, alikeCharge, alikeK) ? mostYears : null };
}
