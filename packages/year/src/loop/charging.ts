import type { ChargeStage } from '@wintergap/battery';

/** What the chargers hold the bank to. */
export const stages = { absorption: 0, float: 1, equalise: 2 } as const;

/** How a bank's chargers move from one set voltage to the next. */
export interface ChargingRules {
  /** Time at the absorption voltage after which float begins, h. */
  absorptionH: number;
  /** Absorption also ends when the current falls below this, A. */
  tailAmps: number;
  /** Days between equalising charges, 0 for never; their length, h. */
  equaliseEveryDays: number;
  equaliseH: number;
}

/** Where the chargers are. One object per run; the loop changes it in place. */
export interface Charging {
  stage: ChargeStage;
  /** Time spent at the voltage limit since the stage began, h. */
  heldH: number;
  daysSinceFull: number;
  daysSinceEqualised: number;
  /** Equalising time so far of the charge that is due, h: what a short day leaves is added on the next. */
  equalisedH: number;
}

export const createCharging = (): Charging => ({
  stage: 0,
  heldH: 0,
  daysSinceFull: 0,
  daysSinceEqualised: 0,
  equalisedH: 0,
});

/** Chargers begin every day, and every engine run, with a bulk charge. */
export function beginBulk(charge: Charging): void {
  charge.stage = stages.absorption;
  charge.heldH = 0;
}

export function beginDay(charge: Charging): void {
  beginBulk(charge);
  charge.daysSinceFull++;
  charge.daysSinceEqualised++;
}

/** Equalising is put off while the bank is warmer than this: common practice, no source. */
const equaliseBelowC = 35;

/** Time until the stage ends if the voltage limit goes on holding, h. */
export function hoursToStageEnd(charge: Charging, rules: ChargingRules, atVoltageLimit: boolean): number {
  if (!atVoltageLimit || charge.stage === stages.float) return Number.POSITIVE_INFINITY;
  const left =
    charge.stage === stages.absorption ? rules.absorptionH - charge.heldH : rules.equaliseH - charge.equalisedH;
  return Math.max(left, 0);
}

/** Counts the time held at the voltage limit and moves on when the stage is over. */
export function holdVoltage(charge: Charging, rules: ChargingRules, hours: number, amps: number, bankC: number): void {
  if (charge.stage === stages.float) return;
  if (charge.stage === stages.absorption) {
    charge.heldH += hours;
    if (charge.heldH + 1e-9 < rules.absorptionH && amps > rules.tailAmps) return;
    charge.daysSinceFull = 0;
    const due = rules.equaliseEveryDays > 0 && charge.daysSinceEqualised >= rules.equaliseEveryDays;
    charge.stage = due && bankC < equaliseBelowC ? stages.equalise : stages.float;
    charge.heldH = 0;
    return;
  }
  charge.equalisedH += hours;
  if (charge.equalisedH + 1e-9 >= rules.equaliseH) {
    charge.stage = stages.float;
    charge.daysSinceEqualised = 0;
    charge.equalisedH = 0;
  } else if (bankC >= equaliseBelowC) {
    charge.stage = stages.float;
  }
}
