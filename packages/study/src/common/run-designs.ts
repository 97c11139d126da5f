import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import type { Site } from '@wintergap/site';
import type { PreparedCache } from '@wintergap/year';
import type { YearFigures } from '../year-figures.js';
import { type CommonYears, commonWeather } from './common-years.js';
import { createDesignRunner, type DesignRunnerStart } from './design-runner.js';
import { designThreads } from './design-threads.js';
import type { DesignYears } from './merit.js';
import { type Growing, mostCommonYears, untilClear } from './until-clear.js';

/** A design under the name by which it is shown. */
export interface NamedSite {
  name: string;
  site: Site;
}

export interface CommonWish {
  /** Years to run; left out: the site's real years if it names several, otherwise `usualCommonYears`. */
  years?: number;
  /** Fixes the made years. */
  seed?: number;
  /** Threads; 1 runs in this one. The result is the same for any number. */
  workers?: number;
  /** Called after each year with how many of how many years are done. */
  onYear?: (done: number, total: number) => void;
  /** What this thread prepared for the year of the file, or in an earlier run: its weather is then not read again. */
  prepared?: PreparedCache;
}

/** Designs and what they did in the same weather years. */
export interface CommonRun {
  weather: Omit<CommonYears, 'weatherOf'>;
  designs: DesignYears[];
}

/** Years of designs below which threads cost more time than they save. */
const worthThreads = 60;

/**
 * Runs designs through common weather years, the same for each.
 *
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function runDesigns(designs: readonly NamedSite[], wish: CommonWish = {}): Promise<CommonRun> {
  const run = createCommonRun(designs, wish);
  await run.reach(run.weather.count);
  return run.soFar();
}

/**
 * Runs designs through common years until the best of them is told from the others, or as far as `mostCommonYears`; no
 * further than asked where a number of years is, or where the site has real years only.
 *
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function runUntilClear(designs: readonly NamedSite[], wish: CommonWish = {}): Promise<CommonRun> {
  if (wish.years !== undefined || designs.length < 2) return runDesigns(designs, wish);
  const { years: count, kind } = commonWeather(designs[0]!.site, wish);
  if (kind === 'real') return runDesigns(designs, wish);
  const run = createCommonRun(designs, { ...wish, years: mostCommonYears });
  return untilClear(run, count);
}

/** A run that can be lengthened: years already run are kept. */
export interface GrowingRun extends Growing<CommonRun> {
  weather: CommonRun['weather'];
}

/** Prepares a run of designs. */
export function createCommonRun(designs: readonly NamedSite[], wish: CommonWish = {}): GrowingRun {
  const { workers = availableParallelism(), onYear, prepared, ...asked } = wish;
  const sites = designs.map(({ site }) => site);
  const start: DesignRunnerStart = { sites, asked };
  const here = createDesignRunner(start, prepared);
  const { weatherOf: _, ...weather } = here.years;
  const years: YearFigures[][] = [];
  let threads: RunYear | null = null;
  return {
    weather,
    async reach(count) {
      const left = count - years.length;
      if (workers > 1 && left > 1 && left * sites.length >= worthThreads) threads ??= designThreads(start, workers - 1);
      await fillYears(years, count, here.run, threads === null ? [] : yearsAhead(threads, workers - 1), (done) =>
        onYear?.(done, count),
      );
    },
    soFar: () => ({
      weather: { ...weather, count: years.length },
      designs: designs.map(({ name }, d) => ({ name, years: years.map((year) => year[d]!) })),
    }),
  };
}

/** Runs a year, here or elsewhere. */
type RunYear = (yearIndex: number) => YearFigures[] | Promise<YearFigures[]>;

/** Years handed to each thread at once, so that none waits for this one, which runs years too. */
const ahead = 2;

const yearsAhead = (threads: RunYear, count: number): RunYear[] => new Array<RunYear>(ahead * count).fill(threads);

/**
 * Runs the years that are missing up to `count`: each goes to whoever is free first, this thread or another.
 *
 * The first year of all is run here: wrong input then fails with its own error, not with a copy from a thread.
 */
async function fillYears(
  years: YearFigures[][],
  count: number,
  here: RunYear,
  others: readonly RunYear[],
  told: (done: number) => void,
): Promise<void> {
  let next = years.length;
  let done = years.length;
  const takeTurns = async (run: RunYear): Promise<void> => {
    while (next < count) {
      const year = next++;
      // Others are handed their years, and what they have done is taken in, before this thread is busy with its own.
      if (run === here) await setImmediate();
      years[year] = await run(year);
      told(++done);
    }
  };
  try {
    await Promise.all([here, ...others].map(takeTurns));
  } finally {
    next = count;
  }
}
