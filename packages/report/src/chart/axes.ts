import * as Plot from '@observablehq/plot';
import { daysPerYear, monthNames, monthSpan } from '@wintergap/ground';

const spans = monthNames.map((_, month) => monthSpan(month));
const firstDays = [...spans.map(({ fromDay }) => fromDay), daysPerYear];
const midDays = spans.map(({ fromDay, toDay }) => (fromDay + toDay) / 2);

/** `Jan`, or `J` where there is no room for more. */
export const monthLabel = (month: number, narrow: boolean): string =>
  narrow ? monthNames[month]!.slice(0, 1) : monthNames[month]!;

/** Months along the bottom of a chart over the days of the year: a line where each begins, its name between. */
export const dayAxis = (narrow: boolean): Plot.Markish[] => [
  Plot.gridX(firstDays, { stroke: 'var(--rule)', strokeOpacity: 1 }),
  Plot.axisX(midDays, {
    tickSize: 0,
    tickFormat: (_: unknown, i: number) => monthLabel(i, narrow),
    label: null,
    fill: 'var(--quiet)',
  }),
];

/** Months along the bottom of a chart with one column for each. */
export const monthAxis = (narrow: boolean): Plot.Markish =>
  Plot.axisX({
    tickSize: 0,
    tickFormat: (month: number) => monthLabel(month, narrow),
    label: null,
    fill: 'var(--quiet)',
  });

/** Figures up the left side, with lines across. */
export const valueAxis = (ticks: number, format: (value: number) => string = String): Plot.Markish[] => [
  Plot.gridY({ ticks, stroke: 'var(--rule)', strokeOpacity: 1 }),
  Plot.axisY({ ticks, tickSize: 0, tickFormat: format, label: null, fill: 'var(--quiet)' }),
];

export const yearScale: Plot.ScaleOptions = { domain: [0, daysPerYear], type: 'linear' };
export const monthScale: Plot.ScaleOptions = {
  domain: monthNames.map((_, month) => month),
  type: 'band',
  padding: 0.18,
};
