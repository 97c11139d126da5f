import * as Plot from '@observablehq/plot';
import type { Ledger } from '@wintergap/tally';
import { dayAxis, valueAxis, yearScale } from './axes.js';
import { type Chart, chartOf, narrowWidth, wideWidth, withData } from './chart.js';
import { atNoon, dailyLowest, dailySum } from './days.js';

/** What the charts of bank and engine show of each day. */
export interface DailyCharge {
  /** Lowest state of charge, 0 to 1. */
  lowest: number[];
  /** State of charge at noon, 0 to 1. */
  noon: number[];
  /** Hours that the engine runs. */
  engineH: number[];
}

/** The bank and the engine of each day of a year. */
export const dailyCharge = (
  ledger: Pick<Ledger, 'lowestStateOfCharge' | 'stateOfCharge' | 'generatorH'>,
): DailyCharge => ({
  lowest: dailyLowest(ledger.lowestStateOfCharge),
  noon: atNoon(ledger.stateOfCharge),
  engineH: dailySum(ledger.generatorH),
});

/** The bank's state of charge on each day: the lowest as a line, noon as dots, and the owner's floor. */
export function chargeChart({ lowest, noon }: DailyCharge, floor: number, narrow: boolean): Chart {
  return chartOf('State of charge of the bank on each day of the year: lowest of the day and at noon.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 210 : 280,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 12,
    x: yearScale,
    y: { domain: [0, 1] },
    marks: [
      dayAxis(narrow),
      valueAxis(5, (share) => `${Math.round(share * 100)} %`),
      Plot.areaY(lowest, { x: middle, y: same, fill: 'var(--charge)', fillOpacity: 0.16 }),
      Plot.ruleY([floor], { stroke: 'var(--quiet)', strokeDasharray: '5 4' }),
      Plot.text([floor], {
        x: 2,
        y: same,
        dy: 8,
        text: () => `floor ${Math.round(floor * 100)} %`,
        textAnchor: 'start',
        fill: 'var(--quiet)',
      }),
      Plot.dot(noon, {
        x: middle,
        y: same,
        r: narrow ? 0.9 : 1.5,
        stroke: 'var(--noon)',
        strokeWidth: narrow ? 0.8 : 1,
        render: withData((day) => ({ day, noon: noon[day]! })),
      }),
      Plot.lineY(lowest, {
        x: middle,
        y: same,
        stroke: 'var(--charge)',
        strokeWidth: narrow ? 1.3 : 1.8,
        render: withData(() => ({ lowest })),
      }),
    ],
  });
}

/** Hours that the engine runs on each day, to stand below the state of charge. */
export function engineDaysChart({ engineH: hours }: DailyCharge, narrow: boolean): Chart {
  const days = hours.map((_, day) => day).filter((day) => hours[day]! > 0);
  return chartOf('Hours that the engine runs on each day of the year.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 84 : 96,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 8,
    x: yearScale,
    y: { domain: [0, Math.max(1, ...hours)] },
    marks: [
      dayAxis(narrow),
      valueAxis(2, (value) => `${value} h`),
      Plot.ruleX(days, {
        x: middleOfDay,
        y1: 0,
        y2: (day: number) => hours[day]!,
        stroke: 'var(--engine)',
        strokeWidth: narrow ? 1.6 : 2.2,
        render: withData((i) => ({ day: days[i]!, hours: hours[days[i]!]! })),
      }),
      Plot.ruleY([0], { stroke: 'var(--quiet)' }),
    ],
  });
}

const same = (value: number) => value;
const middle = (_: number, day: number) => day + 0.5;
const middleOfDay = (day: number) => day + 0.5;
