import type { Summary } from '@wintergap/tally';

/** What a sweep keeps of a design's year, in the order of the file's columns. */
export const resultColumns = [
  'generatorHours',
  'starts',
  'fuelLitres',
  'darkKWh',
  'darkHours',
  'throttledKWh',
  'minStateOfCharge',
  'autonomyDays',
  'availableKWh',
  'usedKWh',
] as const;

export type SweepResults = Record<(typeof resultColumns)[number], number>;

/** One design of a sweep and what came of it. */
export interface SweepRow {
  number: number;
  id: string;
  /** A value for each axis, as written in the site file. */
  values: readonly unknown[];
  /** `null` when the design cannot be run; `error` then says why. */
  results: SweepResults | null;
  error: string;
}

/** The figures of a summary that a sweep keeps: hours, litres, kWh, days, and a fraction for the state of charge. */
export function sweepResults({ generator, load, throttle, bank, array }: Summary): SweepResults {
  return {
    generatorHours: generator.hours,
    starts: generator.starts,
    fuelLitres: generator.fuelLitres,
    darkKWh: load.darkKWh,
    darkHours: load.darkHours,
    throttledKWh: throttle.kWh,
    minStateOfCharge: bank.minStateOfCharge,
    autonomyDays: bank.autonomyDays,
    availableKWh: array.availableKWh,
    usedKWh: array.usedKWh,
  };
}
