import * as Plot from '@observablehq/plot';
import type { UnitSystem } from '@wintergap/quantity';
import { inTemperatureUnit, temperatureUnit } from '../words/shown-units.js';
import { dayAxis, valueAxis, yearScale } from './axes.js';
import { type Chart, chartOf, narrowWidth, wideWidth, withData } from './chart.js';
import { dailyHighest, dailyLowest } from './days.js';

/** A year's temperatures by day, degC. */
export interface DailyTemperature {
  airLowestC: number[];
  airHighestC: number[];
  bankLowestC: number[];
  /** Highest freezing point of the electrolyte on each day; `null` for cells that hold none. */
  freezingC: number[] | null;
}

/** How near, K, the freezing point must come to the bank's or the air's coldest to be drawn. */
const nearK = 15;

/**
 * @param freezingC freezing point of the electrolyte, degC, at a state of charge; -Infinity for none
 */
export function dailyTemperature(
  airC: Float64Array,
  bankC: Float64Array,
  lowestStateOfCharge: Float64Array,
  freezingC: (s: number) => number,
): DailyTemperature {
  const freezing = Number.isFinite(freezingC(0)) ? dailyLowest(lowestStateOfCharge).map(freezingC) : null;
  return {
    airLowestC: dailyLowest(airC),
    airHighestC: dailyHighest(airC),
    bankLowestC: dailyLowest(bankC),
    freezingC: freezing,
  };
}

/** Whether the freezing point comes near enough to what the bank could meet to be worth a line. */
export const freezingMatters = ({ freezingC, airLowestC, bankLowestC }: DailyTemperature): boolean =>
  freezingC !== null && Math.max(...freezingC) > Math.min(...airLowestC, ...bankLowestC) - nearK;

/**
 * Outdoor air from the day's lowest to its highest, the bank's lowest, and where the electrolyte would freeze or, for
 * cells that refuse charge in the cold, the temperature below which they do.
 */
export function temperatureChart(
  days: DailyTemperature,
  noChargeAtC: number | null,
  units: UnitSystem,
  narrow: boolean,
): Chart {
  const shown = (celsius: readonly number[]) => celsius.map((value) => inTemperatureUnit(value, units));
  const air = shown(days.airLowestC).map((low, day) => ({
    low,
    high: inTemperatureUnit(days.airHighestC[day]!, units),
  }));
  const bank = shown(days.bankLowestC);
  const bottom = Math.min(...air.map(({ low }) => low), ...bank) - 4;
  const top = Math.max(...air.map(({ high }) => high), ...bank) + 2;
  const freezing = freezingMatters(days) ? shown(days.freezingC!) : null;
  const lowest = freezing ? Math.min(bottom, Math.max(...freezing) - 4) : bottom;
  return chartOf('Temperature by day: outdoor air from lowest to highest, and the bank at its coldest.', {
    width: narrow ? narrowWidth : wideWidth,
    height: narrow ? 230 : 280,
    marginLeft: 50,
    marginRight: 8,
    marginTop: 28,
    x: yearScale,
    y: { domain: [lowest, top] },
    marks: [
      dayAxis(narrow),
      valueAxis(6),
      unitMark(units),
      airMark(air, days, narrow),
      noChargeAtC === null
        ? null
        : Plot.ruleY([inTemperatureUnit(noChargeAtC, units)], { stroke: 'var(--freezing)', strokeDasharray: '6 4' }),
      freezing &&
        Plot.lineY(cutBelow(freezing, lowest), {
          x: middle,
          y: same,
          stroke: 'var(--freezing)',
          strokeWidth: 1.5,
          strokeDasharray: '5 3',
          render: withData(() => ({ freezing: days.freezingC! })),
        }),
      ...bankMarks(bank, days, narrow),
    ],
  });
}

const unitMark = (units: UnitSystem): Plot.Markish =>
  Plot.text([temperatureUnit(units)], {
    frameAnchor: 'top-left',
    dx: -46,
    dy: -18,
    fill: 'var(--quiet)',
    textAnchor: 'start',
  });

/** A stroke a day from the air's lowest to its highest. */
const airMark = (air: { low: number; high: number }[], days: DailyTemperature, narrow: boolean): Plot.Markish =>
  Plot.ruleX(air, {
    x: middle,
    y1: 'low',
    y2: 'high',
    stroke: 'var(--air)',
    strokeOpacity: 0.75,
    strokeWidth: narrow ? 0.7 : 1.1,
    render: withData((day) => ({
      day,
      'air-lowest': days.airLowestC[day]!,
      'air-highest': days.airHighestC[day]!,
    })),
  });

/** The bank's line, with an edge of paper that lifts it off the air's strokes. */
const bankMarks = (bank: number[], days: DailyTemperature, narrow: boolean): Plot.Markish[] => [
  Plot.lineY(bank, { x: middle, y: same, stroke: 'var(--paper)', strokeWidth: narrow ? 3.6 : 5 }),
  Plot.lineY(bank, {
    x: middle,
    y: same,
    stroke: 'var(--bank)',
    strokeWidth: narrow ? 1.8 : 2.4,
    render: withData(() => ({ bank: days.bankLowestC })),
  }),
];

const same = (value: number) => value;
const middle = (_: unknown, day: number) => day + 0.5;

/** A line that leaves the chart at its bottom edge and comes back there: NaN where it is out of sight. */
function cutBelow(values: readonly number[], bottom: number): number[] {
  const seen = (i: number) => values[i] !== undefined && values[i]! >= bottom;
  return values.map((value, i) => (seen(i) ? value : seen(i - 1) || seen(i + 1) ? bottom : Number.NaN));
}
