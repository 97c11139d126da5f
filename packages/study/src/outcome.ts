import { monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { type DesignYears, meritDifference } from './common/merit.js';
import type { PairedDifference } from './common/paired-difference.js';
import type { YearFigures } from './year-figures.js';

/** What became of a design: the file's year in full, and the figures of the common years, the same for every design. */
export interface DesignOutcome {
  own: YearResult;
  common: readonly YearFigures[];
}

/** What a change to a design is weighed in: means over the common years. */
export interface Outcome {
  generatorHours: number;
  starts: number;
  fuelLitres: number;
  darkKWh: number;
  /** Lowest state of charge of the file's year in the month with the least sun for the load, 0 to 1. */
  darkMonthLowest: number;
}

/**
 * The figures of a design.
 *
 * @param darkMonth 1 for January; that of the design it is held against, since a change of the loads can move it
 */
export function outcomeOf({ own, common }: DesignOutcome, darkMonth: number = own.summary.darkSeason.month): Outcome {
  const mean = (figure: 'generatorHours' | 'starts' | 'fuelLitres' | 'darkKWh') =>
    common.reduce((sum, year) => sum + year[figure], 0) / common.length;
  let darkMonthLowest = 1;
  const { fromHour, toHour } = monthSpan(darkMonth - 1);
  for (let h = fromHour; h < toHour; h++) {
    darkMonthLowest = Math.min(darkMonthLowest, own.ledger.lowestStateOfCharge[h]!);
  }
  return {
    generatorHours: mean('generatorHours'),
    starts: mean('starts'),
    fuelLitres: mean('fuelLitres'),
    darkKWh: mean('darkKWh'),
    darkMonthLowest,
  };
}

/** What something costs the years: the figures with it less those without it, year by year. */
export interface Weight {
  generatorHours: PairedDifference;
  darkKWh: PairedDifference;
  /** Means. */
  starts: number;
  fuelLitres: number;
  /** What the lowest state of charge of the dark month would be without it, 0 to 1. */
  darkMonthLowestWithout: number;
}

export function weightOf(withIt: DesignOutcome, without: DesignOutcome, darkMonth: number): Weight {
  const one = outcomeOf(withIt, darkMonth);
  const other = outcomeOf(without, darkMonth);
  const years = ({ own, common }: DesignOutcome): DesignYears => ({ name: own.site.name, years: common });
  return {
    generatorHours: meritDifference(years(withIt), years(without), 'generatorHours'),
    darkKWh: meritDifference(years(withIt), years(without), 'darkKWh'),
    starts: one.starts - other.starts,
    fuelLitres: one.fuelLitres - other.fuelLitres,
    darkMonthLowestWithout: other.darkMonthLowest,
  };
}

/** Heaviest first: by mean engine hours, then fuel, then dark load. */
export function heavierFirst(one: Weight, other: Weight): number {
  return (
    other.generatorHours.mean - one.generatorHours.mean ||
    other.fuelLitres - one.fuelLitres ||
    other.darkKWh.mean - one.darkKWh.mean
  );
}
