import type { Site } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { figuresUnder, type YearFigures } from '../year-figures.js';
import type { CommonYears, CommonYearsWish } from './common-years.js';
import { yearsOfSites } from './years-of-sites.js';

/** What a thread is given of a run; plain data. */
export interface DesignRunnerStart {
  sites: readonly Site[];
  asked: CommonYearsWish;
}

export interface DesignRunner {
  /** The common years of the first design. */
  years: CommonYears;
  /** What each design does in one of the years. */
  run(yearIndex: number): YearFigures[];
}

/**
 * Prepares the common years of several designs. What a design does in a year depends on the design, the seed and the
 * number of the year only, so years can be run in any order and on any number of threads.
 *
 * @param prepared what earlier runs of the same thread made
 * @throws SiteError or WeatherError when a weather file cannot be used
 */
export function createDesignRunner(
  { sites, asked }: DesignRunnerStart,
  prepared: PreparedCache = new PreparedCache(),
): DesignRunner {
  const yearsOf = sites.map(yearsOfSites(asked, prepared));
  // Each year is run once: what belongs to it makes room for the next one's.
  const ofYear = new PreparedCache(partsOfYear(sites), prepared);
  return {
    years: yearsOf[0]!,
    run: (yearIndex) => sites.map((site, d) => figuresUnder(site, yearsOf[d]!.weatherOf(yearIndex), ofYear)),
  };
}

/** Most parts that are kept of a kind, however many designs there are. */
const mostParts = 32;

/** Parts of each kind that one weather year of all designs has at most: one for each array. */
const partsOfYear = (sites: readonly Site[]): number =>
  Math.min(
    mostParts,
    sites.reduce((sum, { arrays }) => sum + Math.max(1, arrays.length), 0),
  );
