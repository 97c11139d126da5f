import { type CompiledGenerator, startFails } from '@wintergap/generator';
import type { BusFlow } from './bus-flow.js';

/** What the engine is doing. */
export const phases = { off: 0, warming: 1, loaded: 2, cooling: 3 } as const;

/** The engine between two moments. One object per run; the loop changes it in place. */
export interface Engine {
  phase: 0 | 1 | 2 | 3;
  /** Running time since the last start, h. */
  ranH: number;
  /** Time in the present phase, h. */
  inPhaseH: number;
  /** Start attempts so far, for the seeded chance of failing. */
  attempts: number;
  /** Time until a failed start may be tried again, h. */
  waitH: number;
  /** Time for which the bank's voltage has been below the starting voltage, h. */
  lowVoltageH: number;
  /** Whether this run goes on until the bank is full. */
  toFull: boolean;
  /** Whether this run is an exercise, ended by the clock. */
  exercising: boolean;
  /** Hour of the year of the last exercise run, so that one falls once. */
  exercisedAtHour: number;
  /** Time since the engine last ran, h. */
  restH: number;
}

export const createEngine = (): Engine => ({
  phase: phases.off,
  ranH: 0,
  inPhaseH: 0,
  attempts: 0,
  waitH: 0,
  lowVoltageH: 0,
  toFull: false,
  exercising: false,
  exercisedAtHour: -1,
  restH: 0,
});

/** States of charge closer than this are the same. */
const sameCharge = 1e-9;
/** A run to full ends here at the latest: beyond it the acceptance is a trickle. */
const fullCharge = 0.995;

/** Whether the engine runs and gives power. */
export const isLoaded = (engine: Engine): boolean => engine.phase === phases.loaded;

/**
 * Starts or stops the engine at one moment.
 *
 * @param flow the buses at this moment where a run may end with the bulk charge
 * @param bankCarries whether the load would be served without the engine now; while it would not, no run ends but by
 *   the hours that people accept, and the engine starts
 * @param daysSinceFull days since the bank was last full, for runs to full
 * @param isFull whether the chargers have gone to float
 * @returns 1 when the engine was started, 0 otherwise
 */
export function decideEngine(
  engine: Engine,
  generator: CompiledGenerator,
  h: number,
  stateOfCharge: number,
  flow: BusFlow,
  bankCarries: boolean,
  daysSinceFull: number,
  isFull: boolean,
): 0 | 1 {
  switch (engine.phase) {
    case phases.off:
      return tryStart(engine, generator, h, stateOfCharge, bankCarries, daysSinceFull);
    case phases.warming:
      if (engine.inPhaseH + sameCharge >= generator.warmUpH) enter(engine, phases.loaded);
      return 0;
    case phases.loaded:
      if (isOver(engine, generator, h, stateOfCharge, flow, bankCarries, isFull)) {
        enter(engine, generator.coolDownH > 0 ? phases.cooling : phases.off);
      }
      return 0;
    case phases.cooling:
      if (engine.inPhaseH + sameCharge >= generator.coolDownH) enter(engine, phases.off);
      return 0;
  }
}

function enter(engine: Engine, phase: Engine['phase']): void {
  engine.phase = phase;
  engine.inPhaseH = 0;
}

function tryStart(
  engine: Engine,
  generator: CompiledGenerator,
  h: number,
  stateOfCharge: number,
  bankCarries: boolean,
  daysSinceFull: number,
): 0 | 1 {
  if (engine.waitH > sameCharge || generator.startAllowed[h] === 0) return 0;
  const byCharge = stateOfCharge <= generator.startBelow[h]! + sameCharge;
  const byVoltage = generator.startBelowV > 0 && engine.lowVoltageH + sameCharge >= generator.startBelowVForH;
  const byClock =
    generator.exerciseAt[h] === 1 && engine.exercisedAtHour !== h && engine.restH > generator.exerciseEveryH - 24;
  const toFull = generator.fullEveryDays > 0 && daysSinceFull >= generator.fullEveryDays;
  if (bankCarries && !byCharge && !byVoltage && !byClock && !toFull) return 0;
  engine.attempts++;
  if (startFails(generator.startFailure, engine.attempts)) {
    engine.waitH = generator.retryAfterH;
    return 0;
  }
  engine.ranH = 0;
  engine.lowVoltageH = 0;
  engine.exercising = byClock && bankCarries && !byCharge && !byVoltage && !toFull;
  if (byClock) engine.exercisedAtHour = h;
  engine.toFull = toFull;
  enter(engine, generator.warmUpH > 0 ? phases.warming : phases.loaded);
  return 1;
}

function isOver(
  engine: Engine,
  generator: CompiledGenerator,
  h: number,
  stateOfCharge: number,
  flow: BusFlow,
  bankCarries: boolean,
  isFull: boolean,
): boolean {
  if (generator.runAllowed[h] === 0) return true;
  if (!bankCarries) return false;
  if (engine.exercising) return engine.ranH + sameCharge >= generator.exerciseH;
  if (engine.ranH + sameCharge < generator.minimumRunH) return false;
  // In float the chargers only hold the bank: whoever set a later stop would not sit through it. But a charge that
  // ended below what started the run (a bank too cold to take it) is none.
  if (isFull && stateOfCharge > generator.startBelow[h]! + sameCharge) return true;
  if (engine.toFull) return stateOfCharge >= fullCharge;
  if (stateOfCharge + sameCharge >= generator.stopAbove) return true;
  return generator.stopAtBulkEnd && engine.inPhaseH > 0 && flow.engineWantW < flow.engineLimitW;
}

/**
 * Time until the engine's rules next say something, if the state of charge goes on changing at `ratePerH`.
 * Infinite when nothing is in sight. The moment at which a falling acceptance ends the bulk charge is found by the
 * caller, which sees the acceptance.
 *
 * @param isFull whether the chargers have gone to float
 */
export function hoursToEngineEvent(
  engine: Engine,
  generator: CompiledGenerator,
  h: number,
  stateOfCharge: number,
  ratePerH: number,
  voltageV: number,
  isFull: boolean,
): number {
  switch (engine.phase) {
    case phases.off: {
      if (generator.startAllowed[h] === 0) return Number.POSITIVE_INFINITY;
      if (engine.waitH > 0) return engine.waitH;
      const startBelow = generator.startBelow[h]!;
      let hours = Number.POSITIVE_INFINITY;
      if (ratePerH < 0 && stateOfCharge > startBelow) hours = (startBelow - stateOfCharge) / ratePerH;
      if (voltageV < generator.startBelowV) hours = Math.min(hours, generator.startBelowVForH - engine.lowVoltageH);
      return hours;
    }
    case phases.warming:
      return generator.warmUpH - engine.inPhaseH;
    case phases.loaded: {
      if (engine.exercising) return stillAhead(generator.exerciseH - engine.ranH);
      const toShortest = generator.minimumRunH - engine.ranH;
      // A bank that refuses or floats ends the run where its shortest time does, wherever the stop is.
      if (toShortest > sameCharge && (generator.stopAtBulkEnd || isFull)) return toShortest;
      const stopAt = engine.toFull ? fullCharge : generator.stopAbove;
      const toStop =
        stateOfCharge >= stopAt ? 0 : ratePerH > 0 ? (stopAt - stateOfCharge) / ratePerH : Number.POSITIVE_INFINITY;
      return stillAhead(Math.max(toStop, toShortest));
    }
    case phases.cooling:
      return generator.coolDownH - engine.inPhaseH;
  }
}

/** A run past its end goes on because the bank does not carry the load: that is asked again when the flow changes. */
const stillAhead = (hours: number) => (hours > sameCharge ? hours : Number.POSITIVE_INFINITY);

/** Lets time pass for the engine's clocks. */
export function advanceEngine(engine: Engine, generator: CompiledGenerator, hours: number, voltageV: number): void {
  engine.inPhaseH += hours;
  if (engine.phase !== phases.off) {
    engine.ranH += hours;
    engine.restH = 0;
  } else engine.restH += hours;
  engine.waitH = Math.max(engine.waitH - hours, 0);
  engine.lowVoltageH = engine.phase === phases.off && voltageV < generator.startBelowV ? engine.lowVoltageH + hours : 0;
}
