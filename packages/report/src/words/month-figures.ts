import { monthlySums } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { lowestByMonth } from './lowest-by-month.js';

/** A month, or the year, as every table of months tells it. */
export interface MonthFigures {
  planeKWhPerM2: number;
  /** What the controllers could have given. */
  availableKWh: number;
  usedKWh: number;
  thrownKWh: number;
  /** To the buses, after the charger. */
  engineKWh: number;
  /** Asked for by the loads, met or not. */
  loadKWh: number;
  darkKWh: number;
  engineHours: number;
  starts: number;
  fuelLitres: number;
  /** Lowest state of charge, 0 to 1. */
  lowestCharge: number;
}

/** The twelve months of a year, January first, and the year. */
export function monthFigures({ summary, ledger }: YearResult): { months: MonthFigures[]; year: MonthFigures } {
  const kWh = (...columns: Float64Array[]) => {
    const sums = columns.map(monthlySums);
    return (month: number) => sums.reduce((sum, column) => sum + column[month]!, 0) / 1000;
  };
  const engine = kWh(ledger.generatorToBusWh);
  const load = kWh(ledger.acServedWh, ledger.dcServedWh, ledger.darkWh);
  const dark = kWh(ledger.darkWh);
  const lowest = lowestByMonth(ledger.lowestStateOfCharge);
  const months = lowest.map((lowestCharge, m): MonthFigures => {
    const array = summary.array.months[m]!;
    const { hours, starts, fuelLitres } = summary.generator.months[m]!;
    return {
      planeKWhPerM2: array.planeKWhPerM2,
      availableKWh: array.availableKWh,
      usedKWh: array.usedKWh,
      thrownKWh: array.throttledKWh,
      engineKWh: engine(m),
      loadKWh: load(m),
      darkKWh: dark(m),
      engineHours: hours,
      starts,
      fuelLitres,
      lowestCharge,
    };
  });
  const total = (of: (month: MonthFigures) => number) => months.reduce((sum, month) => sum + of(month), 0);
  const year: MonthFigures = {
    planeKWhPerM2: summary.array.planeKWhPerM2,
    availableKWh: summary.array.availableKWh,
    usedKWh: summary.array.usedKWh,
    thrownKWh: summary.array.throttledKWh,
    engineKWh: summary.generator.toBusKWh,
    loadKWh: total((month) => month.loadKWh),
    darkKWh: summary.load.darkKWh,
    engineHours: summary.generator.hours,
    starts: summary.generator.starts,
    fuelLitres: summary.generator.fuelLitres,
    lowestCharge: Math.min(...lowest),
  };
  return { months, year };
}

/** The largest energy that any month of a table has, kWh. */
export const largestEnergy = (months: readonly MonthFigures[]): number =>
  Math.max(...months.flatMap((month) => [month.availableKWh, month.usedKWh, month.engineKWh, month.loadKWh]));
