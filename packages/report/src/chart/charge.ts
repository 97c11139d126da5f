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

/** Axes of the charge's chart and the owner's floor, for who draws the days into it. */
export function chargeFrame(floor: number, narrow: boolean): Chart {
  return chargeChartOf(narrow, [...chargeAxes(narrow), ...floorMarks(floor)]);
}

/** The bank's state of charge on each day: the lowest as a line, noon as dots, and the owner's floor. */
export function chargeChart({ lowest, noon }: DailyCharge, floor: number, narrow: boolean): Chart {
  return chargeChartOf(narrow, [
    ...chargeAxes(narrow),
    Plot.areaY(lowest, { x: middle, y: same, fill: 'var(--charge)', fillOpacity: 0.16 }),
    ...floorMarks(floor),
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
  ]);
}

const chargeChartOf = (narrow: boolean, marks: Plot.Markish[]): Chart =>
  chartOf('State of charge of the bank on each day of the year: lowest of the day and at noon.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 210 : 280,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 12,
    x: yearScale,
    y: { domain: [0, 1] },
    marks,
  });

const chargeAxes = (narrow: boolean): Plot.Markish[] => [
  dayAxis(narrow),
  valueAxis(5, (share) => `${Math.round(share * 100)} %`),
];

const floorMarks = (floor: number): Plot.Markish[] => [
  Plot.ruleY([floor], { stroke: 'var(--quiet)', strokeDasharray: '5 4' }),
  Plot.text([floor], {
    x: 2,
    y: same,
    dy: 8,
    text: () => `floor ${Math.round(floor * 100)} %`,
    textAnchor: 'start',
    fill: 'var(--quiet)',
  }),
];

/**
 * Axes of the engine's days, for who draws the days into them.
 *
 * @param top hours at the top of the scale
 */
export const engineDaysFrame = (top: number, narrow: boolean): Chart =>
  engineDaysOf(top, narrow, [...engineAxes(narrow), engineFoot()]);

/** Hours that the engine runs on each day, to stand below the state of charge. */
export function engineDaysChart({ engineH: hours }: DailyCharge, narrow: boolean): Chart {
  const days = hours.map((_, day) => day).filter((day) => hours[day]! > 0);
  return engineDaysOf(Math.max(1, ...hours), narrow, [
    ...engineAxes(narrow),
    Plot.ruleX(days, {
      x: middleOfDay,
      y1: 0,
      y2: (day: number) => hours[day]!,
      stroke: 'var(--engine)',
      strokeWidth: narrow ? 1.6 : 2.2,
      render: withData((i) => ({ day: days[i]!, hours: hours[days[i]!]! })),
    }),
    engineFoot(),
  ]);
}

const engineDaysOf = (top: number, narrow: boolean, marks: Plot.Markish[]): Chart =>
  chartOf('Hours that the engine runs on each day of the year.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 84 : 96,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 8,
    x: yearScale,
    y: { domain: [0, top] },
    marks,
  });

const engineAxes = (narrow: boolean): Plot.Markish[] => [dayAxis(narrow), valueAxis(2, (value) => `${value} h`)];

const engineFoot = () => Plot.ruleY([0], { stroke: 'var(--quiet)' });

const same = (value: number) => value;
const middle = (_: number, day: number) => day + 0.5;
const middleOfDay = (day: number) => day + 0.5;
