import * as Plot from '@observablehq/plot';
import { daysPerYear } from '@wintergap/ground';
import { dayAxis, valueAxis, yearScale } from './axes.js';
import { type Chart, chartOf, narrowWidth, wideWidth, withData } from './chart.js';

/** The engine in one week of the year: seven days from 1 January on; the last week has a day more. */
export interface EngineWeek {
  fromDay: number;
  toDay: number;
  hours: number;
  starts: number;
  litres: number;
}

/** A bar for each week, as high as the engine's hours, with the figure above it on a wide page. */
export function weeksChart(weeks: readonly EngineWeek[], narrow: boolean): Chart {
  const running = weeks.filter(({ hours }) => hours > 0);
  const most = Math.max(1, ...weeks.map(({ hours }) => hours));
  return chartOf('Hours that the engine runs in each week of the year.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 130 : 150,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 18,
    x: { ...yearScale, domain: [0, daysPerYear] },
    y: { domain: [0, most] },
    marks: [
      dayAxis(narrow),
      valueAxis(3, (hours) => `${hours} h`),
      Plot.rectY(running, {
        x1: ({ fromDay }: EngineWeek) => fromDay + 0.5,
        x2: ({ toDay }: EngineWeek) => toDay - 0.5,
        y: 'hours',
        fill: 'var(--engine)',
        render: withData((i) => ({ week: running[i]!.fromDay / 7 + 1, hours: running[i]!.hours })),
      }),
      narrow
        ? null
        : Plot.text(running, {
            x: ({ fromDay, toDay }: EngineWeek) => (fromDay + toDay) / 2,
            y: 'hours',
            dy: -7,
            text: ({ hours }: EngineWeek) => (hours < 0.5 ? '<1' : String(Math.round(hours))),
            fill: 'var(--ink)',
            fontSize: 10.5,
          }),
    ],
  });
}
