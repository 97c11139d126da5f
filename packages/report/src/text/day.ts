import { dateOfDay } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { dateText, figure, percent, wrap } from '../figures.js';
import { temperatureText } from '../shown-units.js';
import { plainTable } from './plain-table.js';

/** The 24 hours of one day as the wall display would have shown them, 80 columns. */
export function dayText({ ledger, site, load }: YearResult, day: number, units: UnitSystem): string {
  const first = day * 24;
  const hours = Array.from({ length: 24 }, (_, i) => first + i);
  const sum = (column: Float64Array) => hours.reduce((total, h) => total + column[h]!, 0);
  const charge = (h: number) => ledger.stateOfCharge[h]!;
  const lowest = Math.min(...hours.map((h) => ledger.lowestStateOfCharge[h]!));
  const loadWh = sum(load.acW) + sum(load.dcW);
  const engine = sum(ledger.generatorH);
  const rows = hours.map((h) => [
    `${String(h % 24).padStart(2, '0')}:00`,
    figure(ledger.arrayUsedWh[h]! / 1000, 2),
    dash(ledger.throttledWh[h]! / 1000, 2),
    figure((load.acW[h]! + load.dcW[h]!) / 1000, 2),
    dash(ledger.generatorToBusWh[h]! / 1000, 2),
    dash(ledger.generatorH[h]! * 60, 0),
    dash(ledger.darkWh[h]! / 1000, 2),
    ledger.bankV[h]!.toFixed(1),
    percent(charge(h)),
    temperatureText(ledger.bankC[h]!, units),
  ]);
  const verb = engine > 0 ? `the engine runs ${figure(engine * 60, 0)} min` : 'the engine rests';
  return [
    wrap(
      `${site.name}, ${dateText(dateOfDay(day))}: ${percent(charge(first + 11))} at noon, ${percent(lowest)} at the lowest; ${verb}.`,
    ),
    `${figure(sum(ledger.arrayUsedWh) / 1000)} kWh from the sun, ${figure(loadWh / 1000)} kWh of load.`,
    '',
    plainTable(
      ['hour', 'sun', 'thrown', 'load', 'engine', 'engine', 'dark', 'bank', 'charge', 'bank'],
      [['', 'kWh', 'kWh', 'kWh', 'kWh', 'min', 'kWh', 'V', 'at end', ''], ...rows],
    ),
  ].join('\n');
}

const dash = (value: number, digits: number) => (value === 0 ? '-' : figure(value, digits));
