import { OutOfRangeError } from '@wintergap/ground';
import { energyColumns, type Ledger, ledgerColumns } from './ledger.js';

/** A column of the ledger, with what its numbers are. */
export interface LedgerColumn {
  name: string;
  /** Unit of the numbers: `Wh`, `Ah`, `h`, `L`, `V`, `degC`, `days`; empty for shares and counts. */
  unit: string;
  /**
   * How it enters the balance of an hour: `in` and `out` cross the system's edge, `lost` stays in it as heat or gas, a
   * `note` is energy counted elsewhere, a `state` what holds at the hour's end or within it.
   */
  side: 'in' | 'out' | 'lost' | 'note' | 'state';
  /** One number for each hour of the year; energies are those within the hour. */
  values: Float64Array;
}

/** Units by the end of a column's name. */
const unitsByEnd: readonly (readonly [end: string, unit: string])[] = [
  ['Wh', 'Wh'],
  ['Ah', 'Ah'],
  ['H', 'h'],
  ['C', 'degC'],
  ['V', 'V'],
  ['L', 'L'],
  ['daysSinceFull', 'days'],
];

/** Unit of a ledger column, from the end of its name; empty for shares and counts. */
export const columnUnit = (name: string): string => unitsByEnd.find(([end]) => name.endsWith(end))?.[1] ?? '';

/**
 * A column of a year's ledger by its name, such as `generatorWh` or `stateOfCharge`.
 *
 * @throws OutOfRangeError when there is none of that name, with the names that there are
 */
export function ledgerColumn(ledger: Ledger, name: string): LedgerColumn {
  const known = ledgerColumns.find((one) => one === name);
  if (known === undefined) {
    throw new OutOfRangeError(`no column is called "${name}"; the ledger has ${ledgerColumns.join(', ')}`);
  }
  const side = known in energyColumns ? energyColumns[known as keyof typeof energyColumns] : 'state';
  return { name: known, unit: columnUnit(known), side, values: ledger[known] };
}
