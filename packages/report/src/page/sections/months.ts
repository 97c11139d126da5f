import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { monthEnergyScale } from '../../words/energy-scale.js';
import { figure, percent } from '../../words/figures.js';
import { largestEnergy, type MonthFigures, monthFigures } from '../../words/month-figures.js';
import { inVolumeUnit, volumeUnit } from '../../words/shown-units.js';
import type { Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** The twelve months and the year, as figures. */
export function monthsSection(result: YearResult, units: UnitSystem): Markup {
  const { months, year } = monthFigures(result);
  const scale = monthEnergyScale(largestEnergy(months));
  const orDash = (value: number, text: (value: number) => string = figure) => (value === 0 ? '–' : text(value));
  const energy = (kWh: number) => orDash(kWh, () => scale.textOf(kWh * 1000));
  const dark = year.darkKWh > 0;
  const row = (name: string, month: MonthFigures) => [
    name,
    orDash(month.planeKWhPerM2, () => figure(month.planeKWhPerM2, 0)),
    energy(month.availableKWh),
    energy(month.usedKWh),
    energy(month.thrownKWh),
    orDash(month.engineKWh, () => (scale.unit === 'Wh' ? energy(month.engineKWh) : figure(month.engineKWh))),
    energy(month.loadKWh),
    ...(dark ? [energy(month.darkKWh)] : []),
    orDash(month.engineHours),
    orDash(month.starts, () => figure(month.starts, 0)),
    orDash(inVolumeUnit(month.fuelLitres, units)),
    percent(month.lowestCharge),
  ];
  const rows = [...months.map((month, m) => row(monthNames[m]!, month)), row('Year', year)];
  const { unit } = scale;
  return figuresTable(
    'Energy, engine and charge of each month',
    [
      { head: 'Month' },
      { head: 'Light on plane', unit: 'kWh/m²' },
      { head: 'Array offered', unit },
      { head: 'Sun used', unit },
      { head: 'Thrown away', unit },
      { head: 'Engine gave', unit },
      { head: 'Load', unit },
      ...(dark ? [{ head: 'Dark', unit }] : []),
      { head: 'Engine', unit: 'h' },
      { head: 'Starts', unit: '' },
      { head: 'Fuel', unit: volumeUnit(units) },
      { head: 'Lowest charge', unit: '' },
    ],
    rows,
    true,
  );
}
