import type { Site } from '@wintergap/site';
import { PreparedCache, simulateSite, simulateWeather, type YearResult } from '@wintergap/year';
import { quantileSorted } from 'simple-statistics';
import { createWeatherYears, outlookWeather } from '../outlook/years.js';
import { type YearFigures, yearFigures } from '../year-figures.js';
import type { SizeQuestion } from './section.js';
import { badness, type TargetFigure, type Targets, type TargetValues, targetFigures } from './targets.js';

export interface TrialRun {
  years: YearFigures[];
  /** The year under the site's own weather, when that is the one it is judged by. */
  ownYear: YearResult | null;
}

/** Runs a design through the years by which it is judged. */
export interface SizeTrial {
  /** How many years there are. */
  years: number;
  /** The years run: all of them, or as many as it takes to be sure that a target is missed. */
  run(site: Site): TrialRun;
  /** All years. */
  runAll(site: Site): TrialRun;
}

const badYear = 0.9;

/** The one-in-ten value of a figure; of a single year, that year's. */
export function judgedValue(years: readonly YearFigures[], figure: TargetFigure): number {
  const sorted = years.map((year) => badness(figure, year[figure])).sort((a, b) => a - b);
  return 0 + badness(figure, quantileSorted(sorted, badYear));
}

/** The figures that are held against the targets. */
export const judgedValues = (years: readonly YearFigures[]): TargetValues => ({
  generatorHours: judgedValue(years, 'generatorHours'),
  fuelLitres: judgedValue(years, 'fuelLitres'),
  darkHours: judgedValue(years, 'darkHours'),
  autonomyDays: judgedValue(years, 'autonomyDays'),
});

/**
 * As many years past a target as make sure that the one-in-ten year is past it too: the quantile lies at or above the
 * value of rank floor(0.9 (n - 1)) counted from 0, so it fails as soon as so many values stand at that rank or above.
 */
export const yearsToFail = (years: number): number => years - Math.floor((years - 1) * badYear);

/** Prepares the trial; what is prepared under the site's own weather is shared through `ownPrepared`. */
export function createTrial(
  base: Site,
  judged: SizeQuestion['judged'],
  targets: Targets,
  ownPrepared: PreparedCache,
): SizeTrial {
  if (judged.kind === 'usual') {
    const run = (site: Site): TrialRun => {
      const ownYear = simulateSite(site, ownPrepared);
      return { years: [yearFigures(ownYear)], ownYear };
    };
    return { years: 1, run, runAll: run };
  }
  const { years, seed } = judged;
  const { weatherOf } = createWeatherYears(base, outlookWeather(base, { years, seed }));
  const prepared = new PreparedCache(8);
  const figures = targetFigures(targets);
  const most = yearsToFail(years);
  const runYears = (site: Site, mayStop: boolean): TrialRun => {
    const run: YearFigures[] = [];
    const missed = new Map<TargetFigure, number>();
    for (let year = 0; year < years; year++) {
      const result = yearFigures(simulateWeather(site, weatherOf(year), prepared));
      run.push(result);
      let fails = false;
      for (const figure of figures) {
        if (badness(figure, result[figure]) <= badness(figure, targets[figure]!)) continue;
        const count = (missed.get(figure) ?? 0) + 1;
        missed.set(figure, count);
        if (count >= most) fails = true;
      }
      if (fails && mayStop) break;
    }
    return { years: run, ownYear: null };
  };
  return { years, run: (site) => runYears(site, true), runAll: (site) => runYears(site, false) };
}
