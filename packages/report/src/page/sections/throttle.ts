import { monthNames } from '@wintergap/ground';
import type { Summary } from '@wintergap/tally';
import { shadeOf, throttleChart } from '../../chart/throttle.js';
import { count, figure } from '../../words/figures.js';
import { throttlingWhen } from '../../words/throttling-when.js';
import { chartFigure } from '../sheet/figure.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

const shades = [1, 2, 3, 4, 5].map((step) => ({
  text: `${(step - 1) * 20 + (step === 1 ? 1 : 0)}–${step * 20} %`,
  mark: { kind: 'fill' as const, fill: `var(--step${step})` },
}));

/** When the full bank makes the charger turn sun away. */
export function throttleSection({ throttle }: Summary): Markup {
  const { firstDate, lastDate, calendar, hours, kWh } = throttle;
  const heading = 'When does the charger throttle?';
  if (firstDate === null || lastDate === null || calendar.flat().every((share) => shadeOf(share) === 0)) {
    return section('throttle', heading, html`<p>Never: the bank and the load take all that the array offers.</p>`);
  }
  return section(
    'throttle',
    heading,
    chartFigure({
      id: 'throttle-chart',
      chart: (narrow) => throttleChart(throttle, narrow),
      key: shades,
      caption: `Figures are the share of the month's days, in %, on which the charger throttles in the hour that begins then, in local standard time. It throttles ${throttlingWhen(throttle)}; ${count(hours, 'hour')}, ${figure(kWh)} kWh thrown away.`,
      table: figuresTable(
        'Share of days on which the hour throttles, %',
        [{ head: 'Month' }, ...calendar[0]!.map((_, hour) => ({ head: String(hour).padStart(2, '0') }))],
        calendar.map((row, month) => [monthNames[month]!, ...row.map((share) => String(Math.round(share * 100)))]),
      ),
    }),
  );
}
