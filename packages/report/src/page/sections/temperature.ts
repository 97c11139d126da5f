import { dateOfDay, monthNames, monthSpan } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearResult } from '@wintergap/year';
import { type DailyTemperature, dailyTemperature, freezingMatters, temperatureChart } from '../../chart/temperature.js';
import { dateText } from '../../words/figures.js';
import { temperatureDifferenceText, temperatureText, temperatureUnit } from '../../words/shown-units.js';
import { chartFigure, type KeyEntry } from '../sheet/figure.js';
import { section } from '../sheet/frame.js';
import type { Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** How cold the bank gets, beside the air outdoors and what the cells can bear. */
export function temperatureSection({ weather, ledger, plant }: YearResult, units: UnitSystem): Markup {
  const days = dailyTemperature(weather.airC, ledger.bankC, ledger.lowestStateOfCharge, (s) => plant.bank.freezingC(s));
  const { noChargeAtC } = plant.bank.traits;
  const key: KeyEntry[] = [
    { text: 'bank, lowest of the day', mark: { kind: 'line', stroke: 'var(--bank)' } },
    { text: 'outdoor air, lowest to highest', mark: { kind: 'fill', fill: 'var(--air)' } },
  ];
  if (noChargeAtC !== null)
    key.push({ text: 'no charge below', mark: { kind: 'line', stroke: 'var(--freezing)', dash: '6 4' } });
  else if (freezingMatters(days)) {
    key.push({ text: 'electrolyte freezes', mark: { kind: 'line', stroke: 'var(--freezing)', dash: '5 3' } });
  }
  return section(
    'temperature',
    'How cold does the bank get?',
    chartFigure({
      id: 'temperature-chart',
      chart: (narrow) => temperatureChart(days, noChargeAtC, units, narrow),
      key,
      caption: captionOf(days, noChargeAtC, units),
      table: temperatureTable(days, units),
    }),
  );
}

function captionOf(
  { bankLowestC, airLowestC, freezingC }: DailyTemperature,
  noChargeAtC: number | null,
  units: UnitSystem,
): string {
  const coldest = Math.min(...bankLowestC);
  const day = bankLowestC.indexOf(coldest);
  const bank = `The bank is coldest at ${temperatureText(coldest, units)} on ${dateText(dateOfDay(day))}, with ${temperatureText(airLowestC[day]!, units)} outdoors that day.`;
  if (noChargeAtC !== null) return `${bank} These cells take no charge below ${temperatureText(noChargeAtC, units)}.`;
  if (freezingC === null) return bank;
  const margins = bankLowestC.map((celsius, d) => celsius - freezingC[d]!);
  const least = Math.min(...margins);
  const worst = margins.indexOf(least);
  const apart = temperatureDifferenceText(Math.abs(least), units);
  return least >= 0
    ? `${bank} At the nearest, on ${dateText(dateOfDay(worst))}, it is ${apart} warmer than where its electrolyte would freeze.`
    : `${bank} It is ${apart} colder than where its electrolyte begins to freeze on ${dateText(dateOfDay(worst))}.`;
}

function temperatureTable(
  { airLowestC, airHighestC, bankLowestC, freezingC }: DailyTemperature,
  units: UnitSystem,
): Markup {
  const unit = temperatureUnit(units);
  const text = (celsius: number) => temperatureText(celsius, units).replace(` ${unit}`, '').replace('-', '−');
  const rows = monthNames.map((name, month) => {
    const { fromDay, toDay } = monthSpan(month);
    const ofMonth = (days: readonly number[]) => days.slice(fromDay, toDay);
    return [
      name,
      text(Math.min(...ofMonth(airLowestC))),
      text(Math.max(...ofMonth(airHighestC))),
      text(Math.min(...ofMonth(bankLowestC))),
      ...(freezingC ? [text(Math.max(...ofMonth(freezingC)))] : []),
    ];
  });
  return figuresTable(
    'Temperature by month',
    [
      { head: 'Month' },
      { head: 'Air, lowest', unit },
      { head: 'Air, highest', unit },
      { head: 'Bank, lowest', unit },
      ...(freezingC ? [{ head: 'Freezes at most at', unit }] : []),
    ],
    rows,
  );
}
