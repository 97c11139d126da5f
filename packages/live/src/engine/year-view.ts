import { headline, inShownUnits, type MonthlyEnergy, monthlyEnergy } from '@wintergap/report/in-page';
import { type Contract, contractOf, type Ledger } from '@wintergap/tally';
import { exceededLimits, saidOfLimit, type WorstSpell, worstSpell, type YearResult } from '@wintergap/year';
import { type DesignValues, designValues } from '../design/controls-of.js';
import type { HandOver } from '../hand-over/hand-over.js';

/** Hourly columns that the page draws from; they are handed over, not copied. */
export type HourColumns = Pick<
  Ledger,
  | 'stateOfCharge'
  | 'lowestStateOfCharge'
  | 'generatorH'
  | 'arrayUsedWh'
  | 'throttledWh'
  | 'generatorToBusWh'
  | 'acServedWh'
  | 'dcServedWh'
  | 'darkWh'
  | 'bankC'
>;

const hourColumns = [
  'stateOfCharge',
  'lowestStateOfCharge',
  'generatorH',
  'arrayUsedWh',
  'throttledWh',
  'generatorToBusWh',
  'acServedWh',
  'dcServedWh',
  'darkWh',
  'bankC',
] as const satisfies (keyof HourColumns)[];

/** The file's year of one set-up, as the page shows it. */
export interface YearView {
  design: DesignValues;
  /** The figures of `year --json`. */
  summary: Contract;
  /** The first sentences of `year`. */
  sentences: string;
  /** Limits that the design exceeds: it is not to be built. */
  exceeded: string[];
  floor: number;
  hours: HourColumns;
  energy: MonthlyEnergy;
  /** The fortnight with the least sun for the load. */
  worst: WorstSpell;
}

/** What the page shows of a year. */
export function yearView(result: YearResult, { units }: HandOver): YearView {
  const { ledger, summary, plant, limits, site } = result;
  return {
    design: designValues(site),
    summary: contractOf(summary),
    sentences: headline(result, units).replaceAll('\n', ' '),
    exceeded: exceededLimits(limits).map((limit) => inShownUnits(saidOfLimit(limit), units)),
    floor: plant.bank.floor,
    hours: Object.fromEntries(hourColumns.map((name) => [name, ledger[name].slice()])) as unknown as HourColumns,
    energy: monthlyEnergy(ledger),
    worst: worstSpell(result),
  };
}
