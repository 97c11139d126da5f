import { OutOfRangeError } from '@wintergap/ground';
import { type BankSettings, resolveBank } from '../bank-settings.js';
import { type CyclesAtDepth, cyclesAtDepth } from './cycle-life.js';
import { type RainflowCycle, rainflow } from './rainflow.js';

/** Wear of one year; lives are to 80 % of the labelled capacity. */
export interface WearOfYear {
  /** Share of the cycle life used (Miner's sum over rainflow cycles). */
  cycleLifeUsed: number;
  /** Share of the calendar life used, faster when warm. */
  calendarLifeUsed: number;
  /** Charge drawn over the reference capacity. */
  equivalentFullCycles: number;
  /** Years like this one until 80 % capacity, both wears added; Infinity if nothing wears. */
  yearsTo80: number;
}

/** Cooler than this a bank is not credited with a longer life; ours, no source. */
const coolestCreditedC = 15;

/**
 * Speed of calendar ageing against 25 degC: doubles per 10 K (IEEE 450 and 1188 practice: life halves for each
 * 8-10 K above 25 degC). Below 25 degC it slows likewise down to 15 degC and no further.
 */
export function ageingSpeed(tempC: number): number {
  return 2 ** ((Math.max(coolestCreditedC, tempC) - 25) / 10);
}

/** Miner's sum: each cycle uses count / (cycles to failure at its depth). */
export function minerSum(cycles: readonly RainflowCycle[], table: readonly CyclesAtDepth[]): number {
  let used = 0;
  for (const { range, count } of cycles) used += count / cyclesAtDepth(range, table);
  return used;
}

/**
 * Wear of a bank over a year of hourly states of charge and temperatures. Cycle and calendar wear are added, which
 * is cautious: makers' cycle tests contain a little ageing too.
 *
 * @param hourlyState state of charge 0..1, equal steps; its step from last to first value is not counted
 * @param hourlyTempC bank temperature, as many values
 */
export function wearOfYear(hourlyState: Float64Array, hourlyTempC: Float64Array, settings: BankSettings): WearOfYear {
  if (hourlyState.length !== hourlyTempC.length || hourlyState.length < 2) {
    throw new OutOfRangeError(
      `hourlyState and hourlyTempC must have the same length of 2 or more, got ${hourlyState.length} and ${hourlyTempC.length}`,
    );
  }
  const { cyclesByDepth, calendarLifeYears } = resolveBank(settings);
  const n = hourlyState.length;
  let drawn = 0;
  let speed = 0;
  for (let h = 0; h < n; h++) {
    if (h > 0) drawn += Math.max(0, hourlyState[h - 1]! - hourlyState[h]!);
    speed += ageingSpeed(hourlyTempC[h]!);
  }
  const cycleLifeUsed = minerSum(rainflow(hourlyState), cyclesByDepth);
  const calendarLifeUsed = ((speed / n) * (n / 8760)) / calendarLifeYears;
  return {
    cycleLifeUsed,
    calendarLifeUsed,
    equivalentFullCycles: drawn,
    yearsTo80: n / 8760 / (cycleLifeUsed + calendarLifeUsed),
  };
}
