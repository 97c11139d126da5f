import { hoursPerYear, hourText } from '@wintergap/ground';
import { columnUnit, type Ledger, ledgerColumns } from '@wintergap/tally';

/** Unit of a column in the file: energies are kWh there, and days are plain. */
const unitOf = (name: string): string => ({ Wh: 'kWh', days: '' })[columnUnit(name)] ?? columnUnit(name);

/** `arrayUsedWh` as the heading `array used [kWh]`. */
function heading(name: string): string {
  const unit = unitOf(name);
  const suffix = { kWh: /Wh$/, Ah: /Ah$/, h: /H$/, degC: /C$/, V: /V$/, L: /L$/, '': /$^/ }[unit]!;
  const words = name
    .replace(suffix, '')
    .replace(/([A-Z])/g, ' $1')
    .toLowerCase();
  return unit === '' ? words : `${words} [${unit}]`;
}

/**
 * The ledger as CSV: a heading with units, then 8760 rows. `time` is the hour's beginning, `MM-DD HH:00` in local
 * standard time; energies are kWh within the hour, states those at its end. Numbers are written in full, so that the
 * file closes as the ledger does.
 */
export function ledgerCsv(ledger: Ledger): string {
  const lines = [['time', ...ledgerColumns.map(heading)].join(',')];
  const columns = ledgerColumns.map((name) => ({ values: ledger[name], scale: name.endsWith('Wh') ? 1000 : 1 }));
  for (let h = 0; h < hoursPerYear; h++) {
    lines.push([hourText(h), ...columns.map(({ values, scale }) => values[h]! / scale)].join(','));
  }
  return `${lines.join('\n')}\n`;
}
