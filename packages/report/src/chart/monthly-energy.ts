import { monthNames } from '@wintergap/ground';
import { type Ledger, monthlySums } from '@wintergap/tally';

/** A year's energy by month, kWh, January first. */
export interface MonthlyEnergy {
  /** From the sun and used. */
  used: number[];
  /** From the engine to the buses, after its charger. */
  engine: number[];
  /** There, but thrown away because the bank was full. */
  thrown: number[];
  /** Asked for by the loads, whether it was met or not. */
  load: number[];
}

/** What a year's ledger holds of each month. */
export function monthlyEnergy(ledger: Ledger): MonthlyEnergy {
  const kWh = (...columns: Float64Array[]) => {
    const sums = columns.map(monthlySums);
    return monthNames.map((_, month) => sums.reduce((sum, column) => sum + column[month]!, 0) / 1000);
  };
  return {
    used: kWh(ledger.arrayUsedWh),
    engine: kWh(ledger.generatorToBusWh),
    thrown: kWh(ledger.throttledWh),
    load: kWh(ledger.acServedWh, ledger.dcServedWh, ledger.darkWh),
  };
}
