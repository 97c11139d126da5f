import { type CompiledGenerator, compileGenerator } from '@wintergap/generator';
import { expect, test } from 'vitest';
import { type BusFlow, createBusFlow } from './bus-flow.js';
import {
  advanceEngine,
  createEngine,
  decideEngine,
  type Engine,
  hoursToEngineEvent,
  isLoaded,
  phases,
} from './engine.js';
import { petrolSet } from './plant.fixture.js';

// The rules of the engine one by one, as the site file states them: starts at 45 %, stops at 80 %, unless said otherwise.
const place = { elevationM: 0, airC: new Float64Array(8760).fill(10) };
const set = (over: Partial<CompiledGenerator> = {}): CompiledGenerator => ({
  ...compileGenerator(petrolSet, place),
  ...over,
});
const noon = 12;

interface Case {
  engine?: Partial<Engine>;
  generator?: Partial<CompiledGenerator>;
  charge?: number;
  flow?: Partial<BusFlow>;
  bankCarries?: boolean;
  daysSinceFull?: number;
  isFull?: boolean;
}

function decide({
  engine,
  generator,
  charge = 0.6,
  flow,
  bankCarries = true,
  daysSinceFull = 0,
  isFull = false,
}: Case) {
  const after = { ...createEngine(), ...engine };
  const buses = { ...createBusFlow(25), ...flow };
  const started = decideEngine(after, set(generator), noon, charge, buses, bankCarries, daysSinceFull, isFull);
  return { started, after };
}
const starts = (of: Case) => decide(of).started;
/** Whether a loaded engine goes on. */
const goesOn = (of: Case) =>
  isLoaded(decide({ ...of, engine: { phase: phases.loaded, ranH: 1, inPhaseH: 1, ...of.engine } }).after);

test('it starts at its charge and below, and while the bank does not carry the load', () => {
  expect([0.3, 0.45, 0.45 + 1e-10].map((charge) => starts({ charge }))).toEqual([1, 1, 1]);
  expect([0.45 + 1e-6, 0.9].map((charge) => starts({ charge }))).toEqual([0, 0]);
  expect(starts({ charge: 0.9, bankCarries: false })).toBe(1);
});

test('nothing starts it in hours that bar it, or before a failed start may be tried again', () => {
  const startAllowed = new Uint8Array(8760).fill(1);
  startAllowed[noon] = 0;
  expect(starts({ charge: 0.3, bankCarries: false, generator: { startAllowed } })).toBe(0);
  expect(starts({ charge: 0.3, bankCarries: false, engine: { waitH: 0.1 } })).toBe(0);
  expect(starts({ charge: 0.3, engine: { waitH: 0 } })).toBe(1);
});

test('a voltage starts it after its time below, if a voltage was named', () => {
  const generator = { startBelowV: 23.5, startBelowVForH: 0.25 };
  expect([0.2, 0.25, 0.3].map((lowVoltageH) => starts({ generator, engine: { lowVoltageH } }))).toEqual([0, 1, 1]);
  expect(starts({ generator: { startBelowV: 0, startBelowVForH: 0.25 }, engine: { lowVoltageH: 9 } })).toBe(0);
});

test('days without a full bank start a run to full, if a number of days was named', () => {
  const generator = { fullEveryDays: 14 };
  expect([13, 14, 20].map((daysSinceFull) => starts({ generator, daysSinceFull }))).toEqual([0, 1, 1]);
  expect(starts({ daysSinceFull: 400 })).toBe(0);
  expect(decide({ generator, daysSinceFull: 14 }).after.toFull).toBe(true);
  expect(decide({ generator, charge: 0.3 }).after.toFull).toBe(false);
});

test('an exercise falls once in its hour, and is one only where nothing else asks for a run', () => {
  const exerciseAt = new Uint8Array(8760);
  exerciseAt[noon] = 1;
  const generator = { exerciseAt, exerciseEveryH: 720, startBelowV: 23.5, startBelowVForH: 0.25, fullEveryDays: 14 };
  const rested = { restH: 700 };
  const run = decide({ generator, engine: rested });
  expect([run.started, run.after.exercising, run.after.exercisedAtHour]).toEqual([1, true, noon]);
  expect(starts({ generator, engine: { restH: 696 } })).toBe(0);
  expect(starts({ generator, engine: { ...rested, exercisedAtHour: noon } })).toBe(0);
  const others: Case[] = [
    { charge: 0.4 },
    { engine: { lowVoltageH: 1 } },
    { daysSinceFull: 14 },
    { bankCarries: false },
  ];
  for (const other of others) {
    const { after } = decide({ generator, ...other, engine: { ...rested, ...other.engine } });
    expect([after.exercising, after.exercisedAtHour]).toEqual([false, noon]);
  }
  // A run outside that hour is none and does not count as one.
  expect(decide({ charge: 0.4 }).after).toMatchObject({ exercising: false, exercisedAtHour: -1 });
});

test('a start that fails is counted and tried again after its wait', () => {
  const generator = { startFailure: { chance: 1, seed: 1, retryAfterH: 0.5 }, retryAfterH: 0.5 };
  const { started, after } = decide({ charge: 0.3, generator });
  expect(started).toBe(0);
  expect(after).toMatchObject({ attempts: 1, waitH: 0.5, phase: phases.off });
  expect(decide({ charge: 0.3 }).after).toMatchObject({ attempts: 1, waitH: 0 });
});

test('a start sets its clocks to nothing, and begins with the warm-up where there is one', () => {
  const old = { ranH: 5, inPhaseH: 7, lowVoltageH: 2 };
  const fresh = { ranH: 0, inPhaseH: 0, lowVoltageH: 0 };
  expect(decide({ charge: 0.3, engine: old }).after).toMatchObject({ ...fresh, phase: phases.loaded });
  expect(decide({ charge: 0.3, engine: old, generator: { warmUpH: 0.1 } }).after).toMatchObject({
    ...fresh,
    phase: phases.warming,
  });
});

test('it is loaded when it is warm, and off when it has cooled down', () => {
  const generator = { warmUpH: 0.1, coolDownH: 0.05 };
  const after = (phase: Engine['phase'], inPhaseH: number) => decide({ generator, engine: { phase, inPhaseH } }).after;
  expect(after(phases.warming, 0.09)).toMatchObject({ phase: phases.warming, inPhaseH: 0.09 });
  expect(after(phases.warming, 0.1)).toMatchObject({ phase: phases.loaded, inPhaseH: 0 });
  expect(after(phases.cooling, 0.04)).toMatchObject({ phase: phases.cooling, inPhaseH: 0.04 });
  expect(after(phases.cooling, 0.05)).toMatchObject({ phase: phases.off, inPhaseH: 0 });
  const over = { engine: { phase: phases.loaded, ranH: 1, inPhaseH: 1 }, charge: 0.9 };
  expect(decide({ ...over, generator }).after).toMatchObject({ phase: phases.cooling, inPhaseH: 0 });
  expect(decide(over).after).toMatchObject({ phase: phases.off, inPhaseH: 0 });
  expect(decide(over).started).toBe(0);
});

test('a run ends at its charge, not before, and not while the bank does not carry the load', () => {
  expect([0.5, 0.79].map((charge) => goesOn({ charge }))).toEqual([true, true]);
  expect([0.8 - 1e-10, 0.8, 0.95].map((charge) => goesOn({ charge }))).toEqual([false, false, false]);
  expect(goesOn({ charge: 0.95, bankCarries: false })).toBe(true);
});

test('hours that people do not accept end any run', () => {
  const runAllowed = new Uint8Array(8760).fill(1);
  runAllowed[noon] = 0;
  expect(goesOn({ charge: 0.5, bankCarries: false, generator: { runAllowed } })).toBe(false);
  expect(goesOn({ engine: { ranH: 0 }, charge: 0.5, generator: { runAllowed, minimumRunH: 3 } })).toBe(false);
});

test('a shortest run keeps it on beyond its charge, not longer', () => {
  const generator = { minimumRunH: 2 };
  expect([1, 1.99].map((ranH) => goesOn({ charge: 0.9, generator, engine: { ranH } }))).toEqual([true, true]);
  expect(goesOn({ charge: 0.9, generator, engine: { ranH: 2 } })).toBe(false);
  expect(goesOn({ charge: 0.5, generator, engine: { ranH: 3 } })).toBe(true);
});

test('an exercise ends by the clock alone', () => {
  const generator = { exerciseH: 0.25, minimumRunH: 2 };
  expect(goesOn({ charge: 0.95, generator, engine: { exercising: true, ranH: 0.2 } })).toBe(true);
  expect(goesOn({ charge: 0.5, generator, engine: { exercising: true, ranH: 0.25 } })).toBe(false);
});

test('a run ends when the chargers float, unless the bank is still where it began', () => {
  expect(goesOn({ charge: 0.7, isFull: true })).toBe(false);
  expect(goesOn({ charge: 0.45, isFull: true })).toBe(true);
  expect(goesOn({ charge: 0.3, isFull: true })).toBe(true);
  expect(goesOn({ charge: 0.7, isFull: false })).toBe(true);
});

test('a run to full goes on past its charge, up to 99.5 %', () => {
  expect([0.9, 0.994].map((charge) => goesOn({ charge, engine: { toFull: true } }))).toEqual([true, true]);
  expect(goesOn({ charge: 0.995, engine: { toFull: true } })).toBe(false);
});

test('the end of bulk ends a run in which the bank wants less than the engine can give', () => {
  const generator = { stopAbove: 1, stopAtBulkEnd: true };
  const flow = { engineWantW: 900, engineLimitW: 1000 };
  expect(goesOn({ generator, flow })).toBe(false);
  expect(goesOn({ generator, flow: { ...flow, engineWantW: 1000 } })).toBe(true);
  // At the first moment of the load nothing is known of it yet.
  expect(goesOn({ generator, flow, engine: { inPhaseH: 0 } })).toBe(true);
  expect(goesOn({ generator: { stopAbove: 1 }, flow })).toBe(true);
});

const never = Number.POSITIVE_INFINITY;
const next = (
  engine: Partial<Engine>,
  charge: number,
  ratePerH: number,
  over: Partial<CompiledGenerator> = {},
  voltageV = 25,
  isFull = false,
) => hoursToEngineEvent({ ...createEngine(), ...engine }, set(over), noon, charge, ratePerH, voltageV, isFull);

test('off, the next moment is that in which a falling charge or a low voltage starts it', () => {
  // From 50 % at 10 % an hour half an hour to 45 %.
  expect(next({}, 0.5, -0.1)).toBeCloseTo(0.5, 12);
  expect(next({}, 0.5, 0.1)).toBe(never);
  expect(next({}, 0.5, 0)).toBe(never);
  expect(next({}, 0.4, -0.1)).toBe(never);
  const low = { startBelowV: 23.5, startBelowVForH: 0.25 };
  expect(next({ lowVoltageH: 0.1 }, 0.9, -0.1, low, 23)).toBeCloseTo(0.15, 12);
  expect(next({ lowVoltageH: 0.1 }, 0.46, -0.1, low, 23)).toBeCloseTo(0.1, 12);
  expect(next({ lowVoltageH: 0.1 }, 0.9, 0, low, 23.5)).toBe(never);
  expect(next({ waitH: 0.3 }, 0.5, -0.1)).toBe(0.3);
  const startAllowed = new Uint8Array(8760);
  expect(next({ waitH: 0.3 }, 0.5, -0.1, { startAllowed })).toBe(never);
});

test('running, it is the end of its warm-up, run or cool-down', () => {
  expect(next({ phase: phases.warming, inPhaseH: 0.04 }, 0.4, 0, { warmUpH: 0.1 })).toBeCloseTo(0.06, 12);
  expect(next({ phase: phases.cooling, inPhaseH: 0.02 }, 0.4, 0, { coolDownH: 0.05 })).toBeCloseTo(0.03, 12);
  const loaded = { phase: phases.loaded, ranH: 1 };
  // To 80 % from 60 % at 10 % an hour; to 99.5 % in a run to full.
  expect(next(loaded, 0.6, 0.1)).toBeCloseTo(2, 12);
  expect(next({ ...loaded, toFull: true }, 0.6, 0.1)).toBeCloseTo(3.95, 12);
  expect(next(loaded, 0.6, 0.1, { minimumRunH: 5 })).toBeCloseTo(4, 12);
  expect(next(loaded, 0.9, 0.1, { minimumRunH: 5 })).toBeCloseTo(4, 12);
  // Past its charge, or where the charge does not rise, only the shortest run is ahead.
  expect([0, -0.1].map((rate) => next(loaded, 0.9, rate, { minimumRunH: 5 }))).toEqual([4, 4]);
  expect([0, -0.1].map((rate) => next(loaded, 0.8, rate, { minimumRunH: 5 }))).toEqual([4, 4]);
  expect([0, -0.1].map((rate) => next(loaded, 0.6, rate, { minimumRunH: 5 }))).toEqual([never, never]);
  // A bank that refuses, or floats, ends the run where its shortest time does.
  expect(next(loaded, 0.6, 0.1, { minimumRunH: 2, stopAtBulkEnd: true })).toBeCloseTo(1, 12);
  expect(next(loaded, 0.6, 0.1, { minimumRunH: 2 }, 25, true)).toBeCloseTo(1, 12);
  expect(next(loaded, 0.6, 0.1, { minimumRunH: 1, stopAtBulkEnd: true })).toBeCloseTo(2, 12);
  expect(next(loaded, 0.6, 0)).toBe(never);
  expect(next(loaded, 0.6, -0.1)).toBe(never);
  expect(next(loaded, 0.8, 0.1)).toBe(never);
  const exercising = { phase: phases.loaded, exercising: true };
  expect(next({ ...exercising, ranH: 0.1 }, 0.9, 0.1, { exerciseH: 0.25 })).toBeCloseTo(0.15, 12);
  // Past its end a run waits for the bank, not for the clock.
  expect(next({ ...exercising, ranH: 0.25 }, 0.9, 0.1, { exerciseH: 0.25 })).toBe(never);
});

test('its clocks tell running, resting, waiting and low voltage apart', () => {
  const low = set({ startBelowV: 23.5, startBelowVForH: 0.25 });
  const after = (engine: Partial<Engine>, voltageV: number, generator = low) => {
    const clocks = { ...createEngine(), ...engine };
    advanceEngine(clocks, generator, 0.5, voltageV);
    return clocks;
  };
  const resting = { ranH: 2, restH: 3, waitH: 0.7, lowVoltageH: 0.1, inPhaseH: 1 };
  expect(after(resting, 23)).toMatchObject({ ranH: 2, restH: 3.5, lowVoltageH: 0.6, inPhaseH: 1.5 });
  expect(after(resting, 23).waitH).toBeCloseTo(0.2, 12);
  expect(after({ ...resting, waitH: 0.2 }, 23).waitH).toBe(0);
  expect(after(resting, 23.5).lowVoltageH).toBe(0);
  expect(after(resting, 23, set()).lowVoltageH).toBe(0);
  for (const phase of [phases.warming, phases.loaded, phases.cooling]) {
    expect(after({ ...resting, phase }, 23)).toMatchObject({ ranH: 2.5, restH: 0, lowVoltageH: 0, inPhaseH: 1.5 });
  }
});
