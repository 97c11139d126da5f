import * as Plot from '@observablehq/plot';
import { monthNames } from '@wintergap/ground';
import { monthAxis, monthScale, valueAxis } from './axes.js';
import { type Chart, chartOf, narrowWidth, wideWidth, withData } from './chart.js';
import type { MonthlyEnergy } from './monthly-energy.js';

const layers = [
  { name: 'used', fill: 'var(--used)', stroke: 'var(--used)' },
  { name: 'engine', fill: 'url(#engine-dots)', stroke: 'var(--engine)' },
  { name: 'thrown', fill: 'url(#thrown-hatch)', stroke: 'var(--thrown)' },
] as const;

/** Sun used, engine and sun thrown away, stacked by month, with the load as a bar across each column. */
export function energyChart(energy: MonthlyEnergy, narrow: boolean): Chart {
  const bars = monthNames.flatMap((name, month) => {
    let below = 0;
    return layers.map(({ name: layer }) => {
      const kWh = energy[layer][month]!;
      below += kWh;
      return { layer, month, kWh, bottom: below - kWh, top: below, title: `${name}: ${Math.round(kWh)} kWh ${layer}` };
    });
  });
  const months = monthNames.map((_, month) => month);
  const load = (month: number) => energy.load[month]!;
  const across = { x: (month: number) => month, y: load };
  return chartOf('Energy by month: sun used, engine, and sun thrown away, against the load.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 240 : 300,
    marginLeft: 40,
    marginRight: 8,
    marginTop: 28,
    x: monthScale,
    y: { domain: [0, Math.max(1, ...bars.map(({ top }) => top), ...energy.load)], nice: true },
    marks: [
      monthAxis(narrow),
      valueAxis(5),
      Plot.text(['kWh'], { frameAnchor: 'top-left', dx: -36, dy: -19, fill: 'var(--quiet)', textAnchor: 'start' }),
      ...layers.map(({ name, fill, stroke }) => {
        const own = bars.filter(({ layer, kWh }) => layer === name && kWh > 0);
        return Plot.barY(own, {
          x: 'month',
          y1: 'bottom',
          y2: 'top',
          fill,
          stroke,
          strokeWidth: 1,
          title: 'title',
          render: withData((i) => ({ month: own[i]!.month + 1, [name]: own[i]!.kWh })),
        });
      }),
      Plot.tickY(months, { ...across, stroke: 'var(--paper)', strokeWidth: 6 }),
      Plot.tickY(months, {
        ...across,
        stroke: 'var(--ink)',
        strokeWidth: 3,
        render: withData((month) => ({ month: month + 1, load: load(month) })),
      }),
    ],
  });
}
