import { dateOfDay } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import { startReason, type YearResult } from '@wintergap/year';
import { energyScale, energyText } from '../words/energy-scale.js';
import { dateText, figure, percent, wrap } from '../words/figures.js';
import { inTemperatureUnit, temperatureUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

/**
 * The 24 hours of one day as the wall display would have shown them, 80 columns, in Wh or kWh as the day is small or
 * large. In every line, sun + engine = load + inverter + converter + drives + heater + bank, and the last adds them up.
 */
export function dayText(result: YearResult, day: number, units: UnitSystem): string {
  const { ledger, site, plant } = result;
  const first = day * 24;
  const hours = Array.from({ length: 24 }, (_, i) => first + i);
  const sum = (of: (h: number) => number) => hours.reduce((total, h) => total + of(h), 0);
  const charge = (h: number) => ledger.stateOfCharge[h]!;
  const lowest = Math.min(...hours.map((h) => ledger.lowestStateOfCharge[h]!));
  const drives = (h: number) => Math.min(plant.ownUseW[h]!, ledger.ownUseWh[h]!);
  const columns: Column[] = [
    { head: 'sun', of: (h) => ledger.arrayUsedWh[h]!, always: true },
    { head: 'engine', of: (h) => ledger.generatorToBusWh[h]! },
    { head: 'load', of: (h) => ledger.acServedWh[h]! + ledger.dcServedWh[h]!, always: true },
    { head: 'inverter', of: (h) => ledger.inverterLossWh[h]! },
    { head: 'convert', of: (h) => ledger.converterLossWh[h]! },
    { head: 'drives', of: drives },
    { head: 'heater', of: (h) => ledger.ownUseWh[h]! - drives(h) },
    { head: 'bank', of: (h) => ledger.bankChargeWh[h]! - ledger.bankDischargeWh[h]!, always: true },
    { head: 'thrown', of: (h) => ledger.throttledWh[h]! },
    { head: 'dark', of: (h) => ledger.darkWh[h]! },
  ];
  const shown = columns.filter(({ of, always }) => always || hours.some((h) => Math.abs(of(h)) > 0.005));
  const scale = energyScale(
    Math.max(...shown.flatMap(({ of }) => hours.map((h) => Math.abs(of(h))))),
    Math.max(...shown.map(({ of }) => Math.abs(sum(of)))),
  );
  const cell = (wh: number) => (Math.abs(wh) < 0.005 ? '-' : scale.textOf(wh));
  const rows = hours.map((h) => [
    `${String(h % 24).padStart(2, '0')}:00`,
    ...shown.map(({ of }) => cell(of(h))),
    ledger.bankV[h]!.toFixed(1),
    percent(charge(h)),
    figure(inTemperatureUnit(ledger.bankC[h]!, units), 0),
  ]);
  const head = ['hour', ...shown.map((column) => column.head), 'volts', 'charge', 'temp.'];
  const unitRow = ['', ...shown.map(() => scale.unit), 'V', 'at end', temperatureUnit(units)];
  const total = ['day', ...shown.map(({ of }) => cell(sum(of))), '', '', ''];
  const lines = [unitRow, ...rows, total];
  const wide = plainTable(head, lines);
  const fits = Math.max(...wide.split('\n').map((line) => line.length)) <= 80;
  const engine = sum((h) => ledger.generatorH[h]!);
  const verb = engine > 0 ? `the engine runs ${figure(engine * 60, 0)} min` : 'the engine rests';
  const starts = hours.filter((h) => ledger.starts[h]! > 0);
  const energyOf = (of: (h: number) => number) => energyText(sum(of) / 1000);
  const parts = shown.filter(({ head: name }) => !['sun', 'engine', 'bank', 'thrown', 'dark'].includes(name));
  const sources = shown.some(({ head: name }) => name === 'engine') ? 'sun + engine' : 'sun';
  return [
    wrap(
      `${site.name}, ${dateText(dateOfDay(day))}: ${percent(charge(first + 11))} at noon, ${percent(lowest)} at the lowest; ${verb}.`,
    ),
    `${energyOf(columns[0]!.of)} from the sun, ${energyOf(columns[2]!.of)} of load.`,
    ...starts.map((h) => wrap(`Engine start between ${h % 24} h and ${(h % 24) + 1} h: ${startReason(result, h)}.`)),
    '',
    fits ? wide : plainTable(head, lines, 1),
    wrap(`${sources} = ${parts.map(({ head: name }) => name).join(' + ')} + bank (minus: out of the bank)`),
  ].join('\n');
}

interface Column {
  head: string;
  /** Energy of an hour, Wh. */
  of: (hour: number) => number;
  /** Whether it stands there on a day on which it is nothing. */
  always?: boolean;
}
