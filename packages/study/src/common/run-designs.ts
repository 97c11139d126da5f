import type { Site } from '@wintergap/site';
import type { PreparedCache } from '@wintergap/year';
import { type BegunYears, createCommonRun, longest, mayGrow } from './common-run.js';
import { type CommonYears, commonWeather } from './common-years.js';
import type { DesignYears } from './merit.js';
import { untilClear } from './until-clear.js';

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
  /** Years of these very designs that other threads run already: what `beginYears` gave. */
  begun?: BegunYears | null;
}

/** Designs and what they did in the same weather years. */
export interface CommonRun {
  weather: Omit<CommonYears, 'weatherOf'>;
  designs: DesignYears[];
}

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
  if (!mayGrow(designs, wish)) return runDesigns(designs, wish);
  return untilClear(createCommonRun(designs, longest(wish)), commonWeather(designs[0]!.site, wish).years);
}
