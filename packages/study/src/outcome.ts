import { monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';

/** What a change to a design is weighed in. */
export interface Outcome {
  generatorHours: number;
  starts: number;
  fuelLitres: number;
  darkKWh: number;
  /** Lowest state of charge in the month with the least sun for the load, 0 to 1. */
  darkMonthLowest: number;
}

/**
 * The figures of one settled year.
 *
 * @param darkMonth 1 for January; that of the design it is held against, since a change of the loads can move it
 */
export function outcomeOf({ summary, ledger }: YearResult, darkMonth = summary.darkSeason.month): Outcome {
  let lowest = 1;
  const { fromHour, toHour } = monthSpan(darkMonth - 1);
  for (let h = fromHour; h < toHour; h++) lowest = Math.min(lowest, ledger.lowestStateOfCharge[h]!);
  const { hours, starts, fuelLitres } = summary.generator;
  return { generatorHours: hours, starts, fuelLitres, darkKWh: summary.load.darkKWh, darkMonthLowest: lowest };
}

/** What something costs the year: the figures with it less those without it. */
export interface Weight {
  generatorHours: number;
  starts: number;
  fuelLitres: number;
  darkKWh: number;
  /** What the lowest state of charge of the dark month would be without it, 0 to 1. */
  darkMonthLowestWithout: number;
}

export function weightOf(withIt: Outcome, without: Outcome): Weight {
  return {
    generatorHours: withIt.generatorHours - without.generatorHours,
    starts: withIt.starts - without.starts,
    fuelLitres: withIt.fuelLitres - without.fuelLitres,
    darkKWh: withIt.darkKWh - without.darkKWh,
    darkMonthLowestWithout: without.darkMonthLowest,
  };
}

/** Heaviest first: by engine hours, then fuel, then dark load. */
export function heavierFirst(one: Weight, other: Weight): number {
  return other.generatorHours - one.generatorHours || other.fuelLitres - one.fuelLitres || other.darkKWh - one.darkKWh;
}
