import type { Site } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { quantileSorted } from 'simple-statistics';
import type { CommonYears } from '../common/common-years.js';
import { quantileError } from '../common/quantile-error.js';
import { yearsOfSites } from '../common/years-of-sites.js';
import { figuresUnder, type YearFigures } from '../year-figures.js';
import type { SizeQuestion } from './section.js';
import { badness, type TargetFigure, type Targets, type TargetValues, targetFigures } from './targets.js';

/** Runs a design through the common years by which it is judged. */
export interface SizeTrial {
  /** What the years are. */
  weather: Omit<CommonYears, 'weatherOf'>;
  /** The years run: all of them, or as many as it takes to be sure that a target is missed. */
  run(site: Site): YearFigures[];
  /** Runs what is missing of the first `years` years, all when left out. */
  complete(site: Site, run: readonly YearFigures[], years?: number): YearFigures[];
}

/** The share of years that a design must keep its targets in. */
export const judgedShare: Record<SizeQuestion['judged']['kind'], number> = { usual: 0.5, 'one-in-ten': 0.9 };

/** The value that a share of the years does not pass on the bad side: the median, or the one-in-ten value. */
export function judgedValue(years: readonly YearFigures[], figure: TargetFigure, share: number): number {
  const sorted = years.map((year) => badness(figure, year[figure])).sort((a, b) => a - b);
  return 0 + badness(figure, quantileSorted(sorted, share));
}

/** The figures that are held against the targets. */
export const judgedValues = (years: readonly YearFigures[], share: number): TargetValues =>
  ofEach((figure) => judgedValue(years, figure, share));

/** The standard error of each of them. */
export const judgedErrors = (years: readonly YearFigures[], share: number): TargetValues =>
  ofEach((figure) =>
    quantileError(
      years.map((year) => year[figure]),
      share,
    ),
  );

const ofEach = (value: (figure: TargetFigure) => number): TargetValues => ({
  generatorHours: value('generatorHours'),
  fuelLitres: value('fuelLitres'),
  darkHours: value('darkHours'),
  autonomyDays: value('autonomyDays'),
});

/**
 * As many years past a target as make sure that the judged year is past it too: the quantile lies at or above the value
 * of rank floor(share (n - 1)) counted from 0, so it fails as soon as so many values stand at that rank or above.
 */
export const yearsToFail = (years: number, share: number): number => years - Math.floor((years - 1) * share);

/** Parts kept of each kind: those of all years for each of a few arrays. */
const mostKept = 200;

/** Prepares the trial. */
export function createTrial(base: Site, { kind, ...asked }: SizeQuestion['judged'], targets: Targets): SizeTrial {
  const yearsOf = yearsOfSites(asked);
  const { weatherOf: _, ...weather } = yearsOf(base);
  const prepared = new PreparedCache(Math.min(mostKept, 8 + weather.count * (base.arrays.length + 1)));
  const figures = targetFigures(targets);
  const most = yearsToFail(weather.count, judgedShare[kind]);
  const isPast = (year: YearFigures, figure: TargetFigure) =>
    badness(figure, year[figure]) > badness(figure, targets[figure]!);
  const yearOf = (site: Site, year: number): YearFigures => figuresUnder(site, yearsOf(site).weatherOf(year), prepared);
  return {
    weather,
    run: (site) => {
      const run: YearFigures[] = [];
      while (run.length < weather.count) {
        run.push(yearOf(site, run.length));
        if (figures.some((figure) => run.filter((year) => isPast(year, figure)).length >= most)) break;
      }
      return run;
    },
    complete: (site, run, years = weather.count) => {
      const all = run.slice(0, years);
      while (all.length < Math.min(years, weather.count)) all.push(yearOf(site, all.length));
      return all;
    },
  };
}
