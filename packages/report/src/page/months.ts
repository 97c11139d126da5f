import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { monthlyEnergy } from '../chart/energy.js';
import { figure, percent } from '../words/figures.js';
import { lowestByMonth } from '../words/lowest-by-month.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import type { Markup } from './markup.js';
import { figuresTable } from './table.js';

/** The twelve months and the year, as figures. */
export function monthsSection({ summary, ledger }: YearResult, units: UnitSystem): Markup {
  const energy = monthlyEnergy(ledger);
  const lowest = lowestByMonth(ledger.lowestStateOfCharge);
  const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
  const whole = (value: number) => (value === 0 ? '–' : figure(value, 0));
  const fine = (value: number) => (value === 0 ? '–' : figure(value));
  const fuel = (litres: number) => fine(inVolumeUnit(litres, units));
  const row = (
    name: string,
    plane: number,
    available: number,
    [used, thrown, engine, load]: readonly number[],
    { hours, starts, fuelLitres }: { hours: number; starts: number; fuelLitres: number },
    least: number,
  ) => [
    name,
    whole(plane),
    whole(available),
    whole(used!),
    whole(thrown!),
    fine(engine!),
    whole(load!),
    fine(hours),
    whole(starts),
    fuel(fuelLitres),
    percent(least),
  ];
  const rows = monthNames.map((name, m) => {
    const { planeKWhPerM2, availableKWh } = summary.array.months[m]!;
    const energies = [energy.used[m]!, energy.thrown[m]!, energy.engine[m]!, energy.load[m]!];
    return row(name, planeKWhPerM2, availableKWh, energies, summary.generator.months[m]!, lowest[m]!);
  });
  const { planeKWhPerM2, availableKWh } = summary.array;
  const energies = [energy.used, energy.thrown, energy.engine, energy.load].map(total);
  rows.push(row('Year', planeKWhPerM2, availableKWh, energies, summary.generator, Math.min(...lowest)));
  return figuresTable(
    'Energy, engine and charge of each month',
    [
      { head: 'Month' },
      { head: 'Light on plane', unit: 'kWh/m²' },
      { head: 'Array offered', unit: 'kWh' },
      { head: 'Sun used', unit: 'kWh' },
      { head: 'Thrown away', unit: 'kWh' },
      { head: 'Engine gave', unit: 'kWh' },
      { head: 'Load', unit: 'kWh' },
      { head: 'Engine', unit: 'h' },
      { head: 'Starts', unit: '' },
      { head: 'Fuel', unit: volumeUnit(units) },
      { head: 'Lowest charge', unit: '' },
    ],
    rows,
    true,
  );
}
