import type { Derating } from './derating.js';
import type { Exercise } from './exercise.js';
import type { GeneratorFuel } from './fuel-line.js';
import type { HoursAccepted } from './hours-accepted.js';
import type { StartFailure } from './start-failure.js';
import type { StartRule } from './start-threshold.js';

/** Where the set's electricity goes. A DC set feeds the bank's bus itself, an AC set feeds AC loads and a charger. */
export type GeneratorOutput =
  /** `efficiency`: share of the set's output that its regulator and cable pass on to the bus, 1 unless given. */
  | { bus: 'dc'; powerW: number; efficiency?: number }
  /** `charger.powerW` is its DC output. */
  | { bus: 'ac'; powerW: number; charger: { powerW: number; efficiency: number } };

/** What ends a run; of several rules the first that holds. */
export type StopRule =
  /** The bank's state of charge reaches `above`, 0 to 1. */
  | { kind: 'charge'; above: number }
  /** The bank takes less than the charger could give: the slow last part is left to the sun. */
  | { kind: 'bulk-end' };

/** Work that falls due after so many running hours. */
export interface ServiceInterval {
  everyH: number;
  cost?: number;
}

/** An engine-driven generator and the habits of the people who run it. */
export interface GeneratorSettings {
  output: GeneratorOutput;
  fuel: GeneratorFuel;
  /** The engine starts when any of these holds. */
  start: readonly StartRule[];
  stop: readonly StopRule[];
  /** When the engine may run; at any time unless given. */
  accepted?: HoursAccepted;
  /** After this many days without a full bank the engine starts and runs until it is full. */
  fullEveryDays?: number;
  /** Shortest run once started, h. */
  minimumRunH?: number;
  /** Running without load after the start and before the stop, minutes. */
  warmUpMin?: number;
  coolDownMin?: number;
  /** A short run every so many days that keeps the engine fit; left out when it has run anyway. */
  exercise?: Exercise;
  oil?: ServiceInterval;
  overhaul?: ServiceInterval;
  startFailure?: StartFailure;
  /** Power lost to thin and warm air; the common rule unless given. */
  derating?: Derating;
  /** Share of the rating below which the engine should not run for long, 0.3 for diesels unless given. */
  minimumLoad?: number;
}
