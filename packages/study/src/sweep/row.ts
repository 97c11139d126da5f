import { type Costs, labelledKWh, lifeCycleOfYear, ratedKW } from '@wintergap/seasonal';
import { energyByMonth } from '@wintergap/tally';
import type { BareYear } from '@wintergap/year';
import { yearFigures } from '../year-figures.js';

/** The columns of a design's results. */
const resultNames = [
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
  'ratedKW',
  'bankKWh',
] as const;

/** Means and their standard errors over common years. */
const yearNames = [
  'generatorHoursMean',
  'generatorHoursError',
  'fuelLitresMean',
  'fuelLitresError',
  'darkKWhMean',
  'darkKWhError',
] as const;

export type ResultColumn = (typeof resultNames)[number];
type YearColumn = (typeof yearNames)[number];
export type FigureColumn = ResultColumn | YearColumn | 'cost';

/** What a sweep keeps of every design's year, in the order of the file's columns. */
export const resultColumns: readonly ResultColumn[] = resultNames;

/** What a sweep's rows carry beside the figures of the file's year. */
export interface SweepColumns {
  /** Life-cycle cost, where the site file has all prices that it takes. */
  cost: boolean;
  /** Means over so many common years, where they were asked for. */
  years: { count: number; seed: number } | null;
}

/** The columns of figures, in their order. */
export const figureColumns = ({ cost, years }: SweepColumns): readonly FigureColumn[] => [
  ...resultNames,
  ...(cost ? (['cost'] as const) : []),
  ...(years ? yearNames : []),
];

/** The means over common years. */
export type SweepYears = Record<YearColumn, number>;

export type SweepResults = Record<ResultColumn, number> & Partial<SweepYears> & { cost?: number };

/** One design of a sweep and what came of it. */
export interface SweepRow {
  number: number;
  id: string;
  /** A value for each axis, as written in the site file. */
  values: readonly unknown[];
  /** `null` when the design cannot be run; `error` then says why. */
  results: SweepResults | null;
  /** Codes of the limits that the design exceeds; it is then never among the best. */
  limits: readonly string[];
  error: string;
}

/** A row that has results. */
export type RunRow = SweepRow & { results: SweepResults };

/**
 * The figures of a year that a sweep keeps: hours, litres, kWh, days, a fraction for the state of charge, kW and kWh of what
 * is built, and the life-cycle cost if there are prices, endless where it cannot be told.
 */
export function sweepResults(year: BareYear, costs: Costs | null = null): SweepResults {
  const figures = yearFigures(year);
  return {
    generatorHours: figures.generatorHours,
    starts: figures.starts,
    fuelLitres: figures.fuelLitres,
    darkKWh: figures.darkKWh,
    darkHours: figures.darkHours,
    throttledKWh: figures.throttledKWh,
    minStateOfCharge: figures.lowestStateOfCharge,
    autonomyDays: figures.autonomyDays,
    availableKWh: energyByMonth(year.ledger.arrayAvailableWh).kWh,
    usedKWh: energyByMonth(year.ledger.arrayUsedWh).kWh,
    ratedKW: ratedKW(year.site),
    bankKWh: labelledKWh(year.site),
    ...(costs && { cost: lifeCycleOfYear(year, costs).lifeCycle?.total ?? Number.POSITIVE_INFINITY }),
  };
}
