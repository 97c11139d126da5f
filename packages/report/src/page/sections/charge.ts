import { dateOfDay, monthNames, monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { chargeChart, type DailyCharge, dailyCharge, engineDaysChart } from '../../chart/charge.js';
import { meanOfMonth } from '../../chart/days.js';
import { count, dateText, figure, percent } from '../../words/figures.js';
import { lowestByMonth } from '../../words/lowest-by-month.js';
import { chartFigure } from '../sheet/figure.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** How full the bank is through the year, and the days on which the engine runs. */
export function chargeSection({ ledger, site, plant, summary }: YearResult): Markup {
  const days = dailyCharge(ledger);
  const engineDays = days.engineH.filter((hours) => hours > 0).length;
  const lowestDay = Math.floor(ledger.lowestStateOfCharge.indexOf(summary.bank.minStateOfCharge) / 24);
  const engineSays = !site.generator
    ? ''
    : engineDays === 0
      ? ' The engine never runs.'
      : ` The engine runs on ${count(engineDays, 'day')}.`;
  const low = summary.bank.longestDaysBelowHalf;
  return section(
    'charge',
    'How full is the bank?',
    html`${chartFigure({
      id: 'charge-chart',
      chart: (narrow) => chargeChart(days, plant.bank.floor, narrow),
      key: [
        { text: 'lowest of the day', mark: { kind: 'line', stroke: 'var(--charge)' } },
        { text: 'at noon', mark: { kind: 'dot', stroke: 'var(--noon)' } },
        { text: "owner's floor", mark: { kind: 'line', stroke: 'var(--quiet)', dash: '5 4' } },
      ],
      caption: `Lowest ${percent(summary.bank.minStateOfCharge)} on ${dateText(dateOfDay(lowestDay))}, mean ${percent(summary.bank.meanStateOfCharge)}; at most ${figure(low)} days on end below half.${engineSays}`,
      table: chargeTable(ledger, days),
    })}
${
  engineDays > 0 &&
  chartFigure({
    id: 'engine-days-chart',
    chart: (narrow) => engineDaysChart(days, narrow),
    key: [{ text: 'engine, hours of the day', mark: { kind: 'line', stroke: 'var(--engine)' } }],
    caption: `${figure(summary.generator.hours)} h in the year, in ${count(summary.generator.starts, 'start')}.`,
  })
}`,
  );
}

function chargeTable({ lowestStateOfCharge }: YearResult['ledger'], { noon, engineH }: DailyCharge): Markup {
  const lowest = lowestByMonth(lowestStateOfCharge);
  const rows = monthNames.map((name, month) => {
    const { fromDay, toDay } = monthSpan(month);
    const running = engineH.slice(fromDay, toDay).filter((hours) => hours > 0);
    const hours = running.reduce((sum, value) => sum + value, 0);
    return [name, percent(lowest[month]!), percent(meanOfMonth(noon, fromDay, toDay)), running.length, figure(hours)];
  });
  return figuresTable(
    'State of charge and engine by month',
    [
      { head: 'Month' },
      { head: 'Lowest' },
      { head: 'Mean at noon' },
      { head: 'Engine', unit: 'days' },
      { head: 'Engine', unit: 'h' },
    ],
    rows,
  );
}
