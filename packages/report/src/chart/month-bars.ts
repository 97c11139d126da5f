import * as Plot from '@observablehq/plot';
import { monthNames } from '@wintergap/ground';
import { monthAxis, monthScale, valueAxis } from './axes.js';
import { type Chart, chartOf, withData } from './chart.js';

export interface MonthBars {
  label: string;
  unit: string;
  /** January first. */
  values: readonly number[];
  /** The base design's values, drawn as a line across each column; left out for the base itself. */
  base?: readonly number[];
  /** Top of the scale, the same for all charts that stand side by side. */
  top: number;
  fill: string;
  stroke: string;
}

/** One design's twelve months, small, to stand beside other designs'. */
export function monthBarsChart({ label, unit, values, base, top, fill, stroke }: MonthBars): Chart {
  const months = monthNames.map((_, month) => month);
  const marked = base ? months.filter((month) => base[month]! > 0) : [];
  const across = { x: (month: number) => month, y: (month: number) => base![month]! };
  return chartOf(label, {
    width: 280,
    height: 150,
    marginLeft: 34,
    marginRight: 4,
    marginTop: 26,
    marginBottom: 22,
    x: monthScale,
    y: { domain: [0, top], nice: 3 },
    marks: [
      monthAxis(true),
      valueAxis(3),
      Plot.text([unit], { frameAnchor: 'top-left', dx: -30, dy: -17, fill: 'var(--quiet)', textAnchor: 'start' }),
      Plot.barY(months, {
        x: (month: number) => month,
        y: (month: number) => values[month]!,
        fill,
        stroke,
        title: (month: number) => `${monthNames[month]}: ${values[month]!.toFixed(1)} ${unit}`,
        render: withData((month) => ({ month: month + 1, value: values[month]! })),
      }),
      Plot.tickY(marked, { ...across, stroke: 'var(--paper)', strokeWidth: 5 }),
      Plot.tickY(marked, {
        ...across,
        stroke: 'var(--ink)',
        strokeWidth: 2.5,
        render: withData((i) => ({ month: marked[i]! + 1, base: base![marked[i]!]! })),
      }),
      Plot.ruleY([0], { stroke: 'var(--quiet)' }),
    ],
  });
}
