import { createCommonRun, longest, mayGrow } from './common-run.js';
import type { CommonRun, CommonWish, NamedSite } from './common-wish.js';
import { commonWeather } from './common-years.js';
import { untilClear } from './until-clear.js';

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
 * @param leftOut names of designs that are only shown, as `commonAnswer` takes them
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function runUntilClear(
  designs: readonly NamedSite[],
  wish: CommonWish = {},
  leftOut: readonly string[] = [],
): Promise<CommonRun> {
  if (!mayGrow(designs, wish)) return runDesigns(designs, wish);
  return untilClear(createCommonRun(designs, longest(wish)), commonWeather(designs[0]!.site, wish).years, leftOut);
}
