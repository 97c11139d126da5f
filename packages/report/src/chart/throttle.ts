import * as Plot from '@observablehq/plot';
import { monthNames } from '@wintergap/ground';
import type { Summary } from '@wintergap/tally';
import { monthLabel } from './axes.js';
import { type Chart, chartOf, narrowWidth, wideWidth, withData } from './chart.js';

interface Cell {
  month: number;
  hour: number;
  share: number;
  step: number;
}

const hours = Array.from({ length: 24 }, (_, hour) => hour);

/** The shade of a share of days, 1 to 5; 0 for none. */
export const shadeOf = (share: number): number => Math.min(5, Math.ceil(share * 5));

/**
 * The throttle calendar: the share of each month's days on which the charger throttles in that hour, as shade and as
 * figure. Months run down on a wide page and across on a narrow one, where the hours run down.
 */
export function throttleChart({ calendar, firstDate, lastDate }: Summary['throttle'], narrow: boolean): Chart {
  const cells: Cell[] = calendar.flatMap((row, month) =>
    row.map((share, hour) => ({ month, hour, share, step: shadeOf(share) })),
  );
  const marked = seasonMarks(firstDate, lastDate, narrow);
  const byMonth = ({ month }: { month: number }) => month;
  const byHour = ({ hour }: Cell) => hour;
  const [x, y] = narrow ? [byMonth, byHour] : [byHour, byMonth];
  const monthScale = { domain: monthNames.map((_, month) => month), padding: 0.06, type: 'band' } as const;
  const hourScale = { domain: hours, padding: 0.06, type: 'band' } as const;
  const monthTick = (month: number) => monthLabel(month, narrow);
  const hourTick = (hour: number) => (narrow || hour % 3 === 0 ? String(hour).padStart(2, '0') : '');
  return chartOf('Share of days on which the charger throttles for a full bank, by month and hour of the day.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 470 : 320,
    marginLeft: narrow ? 30 : 40,
    marginRight: narrow ? 4 : 88,
    marginTop: narrow ? 40 : 24,
    marginBottom: 6,
    x: narrow ? monthScale : hourScale,
    y: narrow ? hourScale : monthScale,
    marks: [
      Plot.axisX({
        anchor: 'top',
        tickSize: 0,
        tickFormat: narrow ? monthTick : hourTick,
        label: null,
        fill: 'var(--quiet)',
      }),
      Plot.axisY({ tickSize: 0, tickFormat: narrow ? hourTick : monthTick, label: null, fill: 'var(--quiet)' }),
      Plot.cell(cells, {
        x,
        y,
        fill: ({ step }: Cell) => (step === 0 ? 'var(--panel)' : `var(--step${step})`),
        render: withData((i) => ({ month: cells[i]!.month + 1, hour: cells[i]!.hour, share: cells[i]!.share })),
      }),
      Plot.text(
        cells.filter(({ share }) => share >= 0.005),
        {
          x,
          y,
          text: ({ share }: Cell) => String(Math.round(share * 100)),
          fill: ({ step }: Cell) => `var(--step${step}-text)`,
          fontSize: 10.5,
        },
      ),
      Plot.text(marked, {
        ...(narrow ? { x: byMonth, frameAnchor: 'top', dy: -31 } : { y: byMonth, frameAnchor: 'right', dx: 6 }),
        textAnchor: narrow ? 'middle' : 'start',
        text: ({ text }: { text: string }) => text,
        fill: 'var(--ink)',
        fontWeight: 600,
        fontSize: 11,
      } as Plot.TextOptions),
    ],
    color: { type: 'identity' },
  });
}

/** Where the throttling season begins and ends, in words to stand at the months; in one mark if it is the same month. */
function seasonMarks(firstDate: string | null, lastDate: string | null, narrow: boolean) {
  if (firstDate === null || lastDate === null) return [];
  const monthOf = (date: string) => Number(date.slice(0, 2)) - 1;
  const dayText = (date: string) => (narrow ? '' : ` ${Number(date.slice(3))} ${monthNames[monthOf(date)]}`);
  const [from, to] = [`from${dayText(firstDate)}`, `to${dayText(lastDate)}`];
  const [first, last] = [monthOf(firstDate), monthOf(lastDate)];
  if (first !== last) {
    return [
      { month: first, text: from },
      { month: last, text: to },
    ];
  }
  const inOrder = firstDate < lastDate ? [from, to] : [to, from];
  return [{ month: first, text: inOrder.join(narrow ? '/' : '\n') }];
}
