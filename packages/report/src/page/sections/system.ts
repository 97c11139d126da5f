import { daysInMonth, daysPerYear, monthInWords } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import { yearSum } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { designParts } from '../../words/design-parts.js';
import { figure, percent } from '../../words/figures.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable, wordsTable } from '../sheet/table.js';

/** What the year was told to be of: the parts of the system, and what runs on it. */
export function systemSection(result: YearResult, units: UnitSystem): Markup {
  const rows = designParts(result, units).map(({ name, text }) => [name, text]);
  return section(
    'system',
    'What is it made of?',
    html`${wordsTable('The system as assumed', ['Part', 'Taken into the year as'], rows)}
${loadsTable(result)}`,
  );
}

/** Loads in Wh a day, over the year and in the dark month, and what inverter and converter take on top. */
function loadsTable({ load, ledger, summary }: YearResult): Markup {
  const { month } = summary.darkSeason;
  const ofYear = load.items.reduce((sum, { energyWhYear }) => sum + energyWhYear, 0);
  const rows = load.items.map(({ name, bus, energyWhYear, monthsWh }) => [
    name,
    bus.toUpperCase(),
    figure(energyWhYear / daysPerYear, 0),
    figure(monthsWh[month - 1]! / daysInMonth[month - 1]!, 0),
    percent(ofYear > 0 ? energyWhYear / ofYear : 0),
  ]);
  const inDarkMonth = load.items.reduce((sum, { monthsWh }) => sum + monthsWh[month - 1]!, 0);
  const all = ['All', '', figure(ofYear / daysPerYear, 0), figure(inDarkMonth / daysInMonth[month - 1]!, 0), '100 %'];
  const table = figuresTable(
    'What runs on it, Wh a day',
    [
      { head: 'Load' },
      { head: 'Bus' },
      { head: 'Mean of the year', unit: 'Wh a day' },
      { head: monthInWords(month), unit: 'Wh a day' },
      { head: 'Share', unit: 'of the year' },
    ],
    [...rows, all],
    true,
  );
  const onTop = (yearSum(ledger.inverterLossWh) + yearSum(ledger.ownUseWh)) / daysPerYear;
  return html`${table}
<p>Inverter and converter lose, and drives, controllers and heater use, ${figure(onTop, 0)} Wh a day on top.</p>`;
}
