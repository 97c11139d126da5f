import type { Bus } from './appliance.js';
import { LoadTableError } from './load-table-error.js';

/** A column of powers, or of energies of one step. */
export interface ValueColumn {
  index: number;
  bus: Bus;
  isEnergy: boolean;
  /** W or Wh per unit written. */
  factor: number;
}

const units: Readonly<Record<string, Pick<ValueColumn, 'isEnergy' | 'factor'>>> = {
  W: { isEnergy: false, factor: 1 },
  kW: { isEnergy: false, factor: 1000 },
  Wh: { isEnergy: true, factor: 1 },
  kWh: { isEnergy: true, factor: 1000 },
};

/**
 * Finds the columns of a load table in its header: `time`, and one or more that begin with `ac` or `dc` and end with
 * a unit, such as `ac kitchen [kWh]`. Other columns are left alone.
 *
 * @param where source and line, for messages
 */
export function tableColumns(header: readonly string[], where: string): { time: number; values: ValueColumn[] } {
  const time = header.findIndex((cell) => /^time\b/i.test(cell.trim()));
  if (time < 0) throw new LoadTableError(`${where}: no column "time" in "${header.join(', ').slice(0, 60)}"`);
  if (header.some((cell) => /^bank stored\b/.test(cell.trim()))) {
    throw new LoadTableError(`${where}: this is a ledger written by --csv, not a table of measured loads`);
  }
  const values: ValueColumn[] = [];
  for (let index = 0; index < header.length; index++) {
    const cell = header[index]!.trim();
    const bus = /^(ac|dc)\b/i.exec(cell)?.[1]?.toLowerCase();
    if (bus !== 'ac' && bus !== 'dc') continue;
    const unit = units[/\[\s*(\w+)\s*\]$/.exec(cell)?.[1] ?? ''];
    if (!unit)
      throw new LoadTableError(
        `${where}: column "${cell}" must end with its unit, as in "${bus} [W]", [kW], [Wh] or [kWh]`,
      );
    values.push({ index, bus, ...unit });
  }
  if (values.length === 0)
    throw new LoadTableError(`${where}: no load column; expected one such as "ac [W]" or "dc [kWh]"`);
  return { time, values };
}
