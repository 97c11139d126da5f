import * as Plot from '@observablehq/plot';
import { type Chart, narrowWidth, valueAxis, wideWidth } from '@wintergap/report/in-page';
import type { HourColumns } from '../engine/year-view.js';

/** One hour of a day, energies in kWh. */
export interface DayHour {
  hour: number;
  sun: number;
  engine: number;
  thrown: number;
  load: number;
  /** At the hour's end, 0 to 1. */
  charge: number;
  bankC: number;
}

/** @param day of the year, 0 to 364 */
export function dayHours(hours: HourColumns, day: number): DayHour[] {
  return Array.from({ length: 24 }, (_, hour) => {
    const h = day * 24 + hour;
    return {
      hour,
      sun: hours.arrayUsedWh[h]! / 1000,
      engine: hours.generatorToBusWh[h]! / 1000,
      thrown: hours.throttledWh[h]! / 1000,
      load: (hours.acServedWh[h]! + hours.dcServedWh[h]! + hours.darkWh[h]!) / 1000,
      charge: hours.stateOfCharge[h]!,
      bankC: hours.bankC[h]!,
    };
  });
}

const layers = [
  { name: 'sun', fill: 'var(--used)', stroke: 'var(--used)' },
  { name: 'engine', fill: 'url(#engine-dots)', stroke: 'var(--engine)' },
  { name: 'thrown', fill: 'url(#thrown-hatch)', stroke: 'var(--thrown)' },
] as const;

/** Sun, engine and what was thrown away in each hour, stacked, with the load across; and the charge as a line above. */
export function dayEnergyChart(day: readonly DayHour[], narrow: boolean): Chart {
  const bars = day.flatMap((one) => {
    let below = 0;
    return layers.map(({ name }) => {
      below += one[name];
      return { layer: name, hour: one.hour, bottom: below - one[name], top: below };
    });
  });
  return {
    label: 'Energy in each hour of the day: sun used, engine, and sun thrown away, against the load.',
    options: {
      ...frame(narrow, 170),
      marginTop: 24,
      y: { domain: [0, Math.max(0.1, ...bars.map(({ top }) => top), ...day.map(({ load }) => load))], nice: true },
      marks: [
        hourAxis,
        valueAxis(3),
        Plot.text(['kWh'], { frameAnchor: 'top-left', dx: -46, dy: -16, fill: 'var(--quiet)', textAnchor: 'start' }),
        ...layers.map(({ name, fill, stroke }) =>
          Plot.barY(
            bars.filter(({ layer, top, bottom }) => layer === name && top > bottom),
            { x: 'hour', y1: 'bottom', y2: 'top', fill, stroke },
          ),
        ),
        Plot.tickY(day, { x: 'hour', y: 'load', stroke: 'var(--paper)', strokeWidth: 5 }),
        Plot.tickY(day, { x: 'hour', y: 'load', stroke: 'var(--ink)', strokeWidth: 2.5 }),
        Plot.ruleY([0], { stroke: 'var(--quiet)' }),
      ],
    },
  };
}

export function dayChargeChart(day: readonly DayHour[], floor: number, narrow: boolean): Chart {
  return {
    label: 'State of charge of the bank at the end of each hour of the day.',
    options: {
      ...frame(narrow, 120),
      marginTop: 10,
      y: { domain: [0, 1] },
      marks: [
        hourAxis,
        valueAxis(2, (share) => `${Math.round(share * 100)} %`),
        Plot.ruleY([floor], { stroke: 'var(--quiet)', strokeDasharray: '5 4' }),
        Plot.lineY(day, { x: 'hour', y: 'charge', stroke: 'var(--charge)', strokeWidth: 2, curve: 'linear' }),
        Plot.dot(day, { x: 'hour', y: 'charge', r: 2, fill: 'var(--charge)' }),
      ],
    },
  };
}

const frame = (narrow: boolean, height: number): Plot.PlotOptions => ({
  width: narrow ? narrowWidth : wideWidth,
  height,
  marginLeft: 50,
  marginRight: 8,
  x: { domain: Array.from({ length: 24 }, (_, hour) => hour), type: 'band', padding: 0.2 },
});

const hourAxis = Plot.axisX({
  tickSize: 0,
  label: null,
  fill: 'var(--quiet)',
  tickFormat: (hour: number) => (hour % 3 === 0 ? String(hour) : ''),
});
