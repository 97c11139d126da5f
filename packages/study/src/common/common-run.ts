import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import type { YearFigures } from '../year-figures.js';
import type { BegunYears, CommonRun, CommonWish, NamedSite } from './common-wish.js';
import { commonWeather } from './common-years.js';
import { createDesignRunner, type DesignRunner, type DesignRunnerStart } from './design-runner.js';
import { type DesignThreads, designThreads } from './design-threads.js';
import { type Growing, mostCommonYears } from './until-clear.js';

/** Years of designs below which threads cost more time than they save. */
const worthThreads = 60;

/** A run that can be lengthened: years already run are kept. */
export interface GrowingRun extends Growing<CommonRun> {
  weather: CommonRun['weather'];
}

/** Prepares a run of designs. */
export function createCommonRun(designs: readonly NamedSite[], wish: CommonWish = {}): GrowingRun {
  const { workers = availableParallelism(), onYear, prepared, begun } = wish;
  const start = startOf(designs, wish);
  const here = createDesignRunner(start, prepared);
  const { weatherOf: _, ...weather } = here.years;
  const run = begun ?? emptyRun();
  let reached = 0;
  return {
    weather,
    async reach(count) {
      const from = Math.max(1, reached);
      if (isWorthThreads(count - reached, designs.length, workers)) {
        run.threads ??= threadsFor(run, start, workers, from);
      }
      run.told = (done) => onYear?.(done, count);
      await fillYears(run, here.run, count);
      reached = count;
    },
    soFar: () => ({
      weather: { ...weather, count: reached },
      designs: designs.map(({ name }, d) => ({ name, years: run.years.slice(0, reached).map((year) => year[d]!) })),
    }),
  };
}

/**
 * Sets other threads to work on the years of a run before this thread comes to it: it may run the file's year meanwhile.
 * Given to the run of the same designs and wish as `begun`; `null` where threads are not worth their cost.
 */
export function beginYears(designs: readonly NamedSite[], wish: CommonWish = {}): BegunYears | null {
  const [first] = designs;
  const { workers = availableParallelism() } = wish;
  if (!first || wish.years === 1) return null;
  const count = commonWeather(first.site, wish).years;
  if (!isWorthThreads(count, designs.length, workers)) return null;
  const run = emptyRun();
  run.threads = threadsFor(run, startOf(designs, mayGrow(designs, wish) ? longest(wish) : wish), workers, 1);
  run.threads.reach(count);
  return run;
}

const emptyRun = (): BegunYears => ({ years: [], threads: null, told: () => {}, done: 0 });

function startOf(designs: readonly NamedSite[], { years, seed }: CommonWish): DesignRunnerStart {
  return {
    sites: designs.map(({ site }) => site),
    asked: { ...(years !== undefined && { years }), ...(seed !== undefined && { seed }) },
  };
}

const isWorthThreads = (years: number, designs: number, workers: number): boolean =>
  workers > 1 && years > 1 && years * designs >= worthThreads;

const threadsFor = (run: BegunYears, start: DesignRunnerStart, workers: number, from: number): DesignThreads =>
  designThreads(start, workers - 1, from, (year, figures) => takeIn(run, year, figures));

function takeIn(run: BegunYears, year: number, figures: YearFigures[]): void {
  run.years[year] = figures;
  run.told(++run.done);
}

/**
 * Runs the years that are missing up to `count`: each goes to whoever is free first, this thread or another.
 *
 * The first year of all is run here: wrong input then fails with its own error, not with a copy from a thread. So does a
 * year that a thread has failed in.
 */
async function fillYears(run: BegunYears, here: DesignRunner['run'], count: number): Promise<void> {
  const { threads } = run;
  const runHere = async (year: number): Promise<void> => {
    // What others have done is taken in before this thread is busy with a year of its own.
    await setImmediate();
    takeIn(run, year, here(year));
  };
  try {
    threads?.reach(count);
    if (run.years[0] === undefined) await runHere(0);
    for (let year = threads?.take() ?? null; year !== null; year = threads!.take()) await runHere(year);
    await threads?.ended();
    for (let year = 0; year < count; year++) if (run.years[year] === undefined) await runHere(year);
  } catch (error) {
    threads?.stop();
    throw error;
  }
}

/** Whether years are added where the best is in doubt. */
export const mayGrow = (designs: readonly NamedSite[], wish: CommonWish): boolean =>
  wish.years === undefined && designs.length > 1 && commonWeather(designs[0]!.site, wish).kind !== 'real';

/** The same with as many years as there can ever be. */
export const longest = (wish: CommonWish): CommonWish => ({ ...wish, years: mostCommonYears });
