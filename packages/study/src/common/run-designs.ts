import { availableParallelism } from 'node:os';
import type { Site } from '@wintergap/site';
import { Piscina } from 'piscina';
import type { YearFigures } from '../year-figures.js';
import { type CommonYears, commonWeather } from './common-years.js';
import { createDesignRunner, type DesignRunnerStart } from './design-runner.js';
import { type DesignYears, moreYearsCouldTell } from './merit.js';

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
  try {
    await run.reach(run.weather.count);
    return run.soFar();
  } finally {
    await run.close();
  }
}

/** Most years that are run of their own accord where fewer leave the best in doubt. */
export const mostCommonYears = 100;

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
  try {
    for (let years = count; ; years *= 2) {
      await run.reach(Math.min(years, mostCommonYears));
      const soFar = run.soFar();
      if (years >= mostCommonYears || !moreYearsCouldTell(soFar.designs)) return soFar;
    }
  } finally {
    await run.close();
  }
}

/** A run that can be lengthened: years already run are kept. */
export interface GrowingRun {
  weather: CommonRun['weather'];
  /** Runs the years that are missing up to `count`. */
  reach(count: number): Promise<void>;
  soFar(): CommonRun;
  close(): Promise<void>;
}

/** Prepares a run of designs; `close` ends its threads. */
export function createCommonRun(designs: readonly NamedSite[], wish: CommonWish = {}): GrowingRun {
  const { workers = availableParallelism(), onYear, ...asked } = wish;
  const sites = designs.map(({ site }) => site);
  const start: DesignRunnerStart = { sites, asked };
  const here = createDesignRunner(start);
  const { weatherOf: _, ...weather } = here.years;
  const years: YearFigures[][] = [];
  let pool: Piscina<number, YearFigures[]> | null = null;
  return {
    weather,
    async reach(count) {
      const first = years.length;
      if (count <= first) return;
      let done = first;
      const told = (figures: YearFigures[]) => {
        done++;
        onYear?.(done, count);
        return figures;
      };
      // The first year is always run here: wrong input then fails with its own error, not with a copy from a thread.
      if (first === 0) years.push(told(here.run(0)));
      const left = count - years.length;
      if (left === 0) return;
      const threads = Math.min(workers, left);
      if (threads <= 1 || left * sites.length < worthThreads) {
        while (years.length < count) years.push(told(here.run(years.length)));
        return;
      }
      pool ??= new Piscina({
        filename: new URL('./design-worker.js', import.meta.url).href,
        minThreads: threads,
        maxThreads: threads,
        workerData: start,
      });
      const threadsOf = pool;
      const from = years.length;
      const rest = Array.from({ length: left }, async (_, i) => told(await threadsOf.run(from + i)));
      years.push(...(await Promise.all(rest)));
    },
    soFar: () => ({
      weather: { ...weather, count: years.length },
      designs: designs.map(({ name }, d) => ({ name, years: years.map((year) => year[d]!) })),
    }),
    async close() {
      await pool?.destroy();
    },
  };
}
