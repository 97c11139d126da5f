import { dateOfDay, monthInWords } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { yearsInWords } from '../../words/common-words.js';
import { darkHoursText, darkKWhText } from '../../words/dark-text.js';
import { count, dateText, figure, percent } from '../../words/figures.js';
import { amountText } from '../../words/money.js';
import { volumeText } from '../../words/shown-units.js';
import { throttlingWhen } from '../../words/throttling-when.js';
import { html, type Markup } from '../sheet/markup.js';

/** What is longer is a sentence, and set as one. */
const longest = 24;

interface Fact {
  name: string;
  value: string;
  more?: string;
}

/** The year's few most asked-for figures. */
export function factsList(result: YearResult, units: UnitSystem, common?: CommonAnswer): Markup {
  return html`<dl class="facts">
${[...commonFacts(common), ...facts(result, units)].map(
  ({ name, value, more }) =>
    html`<div><dt>${name}</dt><dd${value.length > longest && html` class="long"`}>${value}${more !== undefined && html`<small>${more}</small>`}</dd></div>
`,
)}</dl>`;
}

/** What the common years say, before the figures of the file's year. */
function commonFacts(common: CommonAnswer | undefined): Fact[] {
  const own = common?.designs[0];
  if (!common || !own || common.weather.count < 2 || common.merit !== 'generatorHours') return [];
  const { usual, oneInTen } = own.ranked.generatorHours;
  return [
    { name: 'Engine, usual year', value: `${figure(usual.value)} h`, more: yearsInWords(common.weather) },
    { name: 'Engine, one year in ten', value: `${figure(oneInTen.value)} h`, more: 'or more' },
  ];
}

function facts({ site, summary, ledger }: YearResult, units: UnitSystem): Fact[] {
  const { generator, throttle, array, bank, load } = summary;
  const lowestHour = ledger.lowestStateOfCharge.indexOf(bank.minStateOfCharge);
  const cost =
    generator.fuelCost === null ? {} : { more: `costs ${amountText(generator.fuelCost, site.costs?.currency)}` };
  return [
    ...(site.generator
      ? [
          { name: 'Engine, this year', value: `${figure(generator.hours)} h`, more: count(generator.starts, 'start') },
          { name: 'Fuel', value: volumeText(generator.fuelLitres, units), ...cost },
        ]
      : []),
    {
      name: 'Thrown away',
      value: `${figure(throttle.kWh)} kWh`,
      more: `${percent(throttle.kWh / (array.availableKWh || 1))} of what was offered`,
    },
    {
      name: 'Throttling',
      value: throttle.firstDate === null && throttle.kWh < 0.5 ? 'never' : throttlingWhen(throttle),
    },
    {
      name: 'Lowest charge',
      value: percent(bank.minStateOfCharge),
      more: `on ${dateText(dateOfDay(Math.floor(lowestHour / 24)))}`,
    },
    {
      name: `Autonomy in ${monthInWords(summary.darkSeason.month)}`,
      value: `${figure(bank.autonomyDays)} days`,
      more: 'from a full bank',
    },
    {
      name: 'Dark load',
      value: load.darkKWh === 0 ? 'none' : darkKWhText(load.darkKWh),
      ...(load.darkKWh > 0 && { more: `over ${darkHoursText(load.darkHours)}` }),
    },
  ];
}
