import { monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { type MonthFigures, monthFigures } from '../words/month-figures.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { type Column, spreadsheet } from './spreadsheet.js';

type Row = MonthFigures & { name: string; usualHours: number | null };

/**
 * The months of a year as CSV, one row each, the figures of the page's table of months in full.
 *
 * @param common adds the mean engine hours of each month over the common years
 */
export function monthsCsv(result: YearResult, units: UnitSystem, common?: CommonAnswer): string {
  const price = result.site.generator?.fuel.price;
  const volume = volumeUnit(units);
  const columns: Column<Row>[] = [
    { head: 'month', of: ({ name }) => name },
    { head: 'light on plane [kWh/m2]', of: ({ planeKWhPerM2 }) => planeKWhPerM2 },
    { head: 'array offered [kWh]', of: ({ availableKWh }) => availableKWh },
    { head: 'sun used [kWh]', of: ({ usedKWh }) => usedKWh },
    { head: 'thrown away [kWh]', of: ({ thrownKWh }) => thrownKWh },
    { head: 'engine gave [kWh]', of: ({ engineKWh }) => engineKWh },
    { head: 'load [kWh]', of: ({ loadKWh }) => loadKWh },
    { head: 'dark load [kWh]', of: ({ darkKWh }) => darkKWh },
    { head: 'engine [h]', of: ({ engineHours }) => engineHours },
    { head: 'engine starts', of: ({ starts }) => starts },
    { head: `fuel [${volume}]`, of: ({ fuelLitres }) => inVolumeUnit(fuelLitres, units) },
    ...(price === undefined ? [] : [{ head: 'fuel cost', of: ({ fuelLitres }: Row) => fuelLitres * price }]),
    { head: 'lowest charge [%]', of: ({ lowestCharge }) => lowestCharge * 100 },
    ...(common ? [{ head: 'engine, mean of the common years [h]', of: ({ usualHours }: Row) => usualHours }] : []),
  ];
  const rows = monthFigures(result).months.map((month, m) => ({
    ...month,
    name: monthNames[m]!,
    usualHours: common?.designs[0]?.monthHours[m] ?? null,
  }));
  return spreadsheet(rows, columns);
}
