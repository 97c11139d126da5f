import type { YearFigures } from '../year-figures.js';
import { type QuantileRange, quantileRange } from './quantile-range.js';

/** The figures that are ranked, and which way is bad. */
export const rankedFigures = {
  generatorHours: 'high',
  fuelLitres: 'high',
  darkHours: 'high',
  darkKWh: 'high',
  throttledKWh: 'high',
  lowestStateOfCharge: 'low',
  autonomyDays: 'low',
} as const;

export type RankedFigure = keyof typeof rankedFigures;

/** One figure over many years; bad is high or low as the figure has it. */
export interface Ranked {
  /** Median. */
  usual: QuantileRange;
  /** The value that nine years in ten do not pass on the bad side. */
  oneInTen: QuantileRange;
  worst: number;
  /** Number of the worst year, the first of them if several are equal. */
  worstYear: number;
}

/** Ranks one figure of the years, each figure by itself: the worst year for fuel need not be the darkest. */
export function rankYears(years: readonly YearFigures[], figure: RankedFigure): Ranked {
  const sign = rankedFigures[figure] === 'high' ? 1 : -1;
  const bad = years.map((year) => sign * year[figure]);
  const sorted = [...bad].sort((a, b) => a - b);
  const worst = sorted[sorted.length - 1]!;
  return {
    usual: turned(quantileRange(sorted, 0.5), sign),
    oneInTen: turned(quantileRange(sorted, 0.9), sign),
    worst: sign * worst,
    worstYear: bad.indexOf(worst),
  };
}

function turned({ value, low, high }: QuantileRange, sign: 1 | -1): QuantileRange {
  if (sign === 1) return { value, low, high };
  const negated = (bound: number | null) => (bound === null ? null : 0 - bound);
  return { value: 0 - value, low: negated(high), high: negated(low) };
}
