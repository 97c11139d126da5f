import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, RankedFigure } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { yearsInWords } from '../../words/common-words.js';
import { figure, percent } from '../../words/figures.js';
import { amountText } from '../../words/money.js';
import { inVolumeUnit, volumeUnit } from '../../words/shown-units.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/**
 * The usual year, the bad one and the year of the file, side by side; nothing where only the file's was run. Each figure
 * is ranked by itself: the year bad for fuel need not be the darkest.
 */
export function outcomeSection({ site, summary }: YearResult, units: UnitSystem, common?: CommonAnswer): Markup[] {
  const own = common?.designs[0];
  if (!common || !own || common.weather.count < 2) return [];
  const { generator, load, throttle, bank } = summary;
  const price = site.generator?.fuel.price;
  const row = (name: string, figureName: RankedFigure, ofFile: number, text: (value: number) => string) => {
    const { usual, oneInTen, worst } = own.ranked[figureName];
    return [name, text(usual.value), text(oneInTen.value), text(worst), text(ofFile)];
  };
  const fuel = (litres: number) => figure(inVolumeUnit(litres, units));
  const rows = [
    ...(site.generator
      ? [
          row('Engine, h', 'generatorHours', generator.hours, (hours) => figure(hours)),
          row(`Fuel, ${volumeUnit(units)}`, 'fuelLitres', generator.fuelLitres, fuel),
        ]
      : []),
    ...(price === undefined
      ? []
      : [
          row('Fuel costs', 'fuelLitres', generator.fuelLitres, (litres) =>
            amountText(litres * price, site.costs?.currency),
          ),
        ]),
    row('Dark load, kWh', 'darkKWh', load.darkKWh, (kWh) => figure(kWh)),
    row('Thrown away, kWh', 'throttledKWh', throttle.kWh, (kWh) => figure(kWh, 0)),
    row('Lowest charge', 'lowestStateOfCharge', bank.minStateOfCharge, (share) => percent(share)),
  ];
  return [
    section(
      'outcome',
      'What will a year be like?',
      html`${figuresTable(
        `Usual and bad year of ${yearsInWords(common.weather)}, and the year of the file`,
        [
          { head: 'Figure' },
          { head: 'Usual year', unit: 'half are worse' },
          { head: 'Bad year', unit: 'one in ten is worse' },
          { head: 'Worst', unit: `of ${common.weather.count}` },
          { head: 'This year', unit: "the file's weather" },
        ],
        rows,
      )}
<p>Each line is ranked by itself: the year that burns most fuel need not be the darkest.</p>`,
    ),
  ];
}
