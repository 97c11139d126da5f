import type { Site } from '@wintergap/site';
import {
  type CommonAnswer,
  type CommonYears,
  type ComparedCost,
  commonAnswer,
  commonWeather,
  commonYearsFrom,
  costsOfDesigns,
  figuresOf,
  mostCommonYears,
  untilClear,
  type YearFigures,
} from '@wintergap/study';
import { bankFacts, exceededLimits, PreparedCache, simulateInputs } from '@wintergap/year';
import type { Change, NamedChange } from '../design/change.js';
import type { HandOver } from '../hand-over/hand-over.js';
import { designOfChange } from './design-of-change.js';

/** What the common years say so far. */
export interface YearsAnswer {
  /** Of each set-up, in the order asked. */
  common: CommonAnswer;
  /** What each costs by the prices of the site file; `null` where it has none. */
  costs: ComparedCost[] | null;
  /** Years that every set-up has been through, of so many. */
  done: number;
  total: number;
  /** Nothing more is coming. */
  settled: boolean;
}

/** Thrown where a newer question makes the rest of an answer idle. */
export class Superseded extends Error {
  override readonly name = 'Superseded';
}

/** Between two tellings of how far the years are, ms. */
const tellMs = 100;

/** Set-ups whose years are kept, so that what was pinned is not run again. */
const mostKept = 64;

/** A set-up and the years that it has been through. */
interface Run {
  site: Site;
  /** It exceeds a limit and is not to be recommended. */
  leftOut: boolean;
  /** Years that its bank lasts, as the file's year wears it. */
  bankYears: number;
  years: YearFigures[];
}

/** Gives the run of a set-up, begun anew or as far as it was brought before. */
function keptRuns(handOver: HandOver, prepared: PreparedCache): (setUp: NamedChange) => Run {
  const { years: real, measured } = handOver;
  const kept = new Map<string, Run>();
  const begun = (change: Change): Run => {
    const site = designOfChange(handOver, change);
    const own = simulateInputs(site, { weather: real[0]!, measured }, prepared);
    return {
      site,
      leftOut: exceededLimits(own.limits).length > 0,
      bankYears: bankFacts(own).wear.yearsTo80,
      years: [],
    };
  };
  return ({ change }) => {
    const key = JSON.stringify(change);
    const run = kept.get(key) ?? begun(change);
    kept.delete(key);
    kept.set(key, run);
    if (kept.size > mostKept) kept.delete(kept.keys().next().value!);
    return run;
  };
}

/** The years that all set-ups share: how many are run at first, and whether there may be more. */
interface SharedYears {
  years: CommonYears;
  count: number;
  grows: boolean;
}

function sharedYears(site: Site, { years: real, wish }: HandOver): SharedYears {
  const { years: count, kind } = commonWeather(site, wish);
  const grows = kind !== 'real' && wish.years === undefined;
  const read = { own: () => real[0]!, all: () => real };
  const years = commonYearsFrom(site, read, grows ? { ...wish, years: mostCommonYears } : wish);
  return { years, count: wish.years === 1 ? 1 : count, grows };
}

/**
 * Runs what is missing of set-ups and tells how far it is.
 *
 * @param pause lets other messages in; throws when the answer is not wanted any more
 */
export type Settle = (
  setUps: readonly NamedChange[],
  tell: (answer: YearsAnswer) => void,
  pause: () => Promise<void>,
) => Promise<void>;

/** Runs set-ups through the site's common years, those of `compare`, and keeps what was run. */
export function createYearsRunner(handOver: HandOver): Settle {
  const prepared = new PreparedCache(mostKept);
  const runOf = keptRuns(handOver, prepared);
  let shared: SharedYears | null = null;
  return async (setUps, tell, pause) => {
    const runs = setUps.map(runOf);
    shared ??= sharedYears(runs[0]!.site, handOver);
    const { weatherOf, ...weather } = shared.years;
    const leftOut = setUps.filter((_, d) => runs[d]!.leftOut).map(({ name }) => name);
    let reached = 0;
    let toldAt = 0;
    const soFar = () => ({
      weather: { ...weather, count: reached },
      designs: setUps.map(({ name }, d) => ({ name, years: runs[d]!.years.slice(0, reached) })),
    });
    const answerOf = (total: number, settled: boolean): YearsAnswer => {
      const common = commonAnswer(soFar(), leftOut);
      const designs = setUps.map(({ name }, d) => ({ name, site: runs[d]!.site, bankYears: runs[d]!.bankYears }));
      const costs = handOver.costs && costsOfDesigns(designs, common, handOver.costs);
      return { common, costs, done: reached, total, settled };
    };
    const reach = async (total: number) => {
      while (reached < total) {
        for (const { site, years } of runs) {
          if (years.length > reached) continue;
          const inputs = { weather: weatherOf(reached), measured: handOver.measured };
          years.push(figuresOf(site, inputs, prepared));
          await pause();
        }
        reached++;
        const now = performance.now();
        if (reached === total || now - toldAt < tellMs) continue;
        tell(answerOf(total, false));
        toldAt = now;
      }
    };
    if (shared.grows) await untilClear({ reach, soFar }, shared.count, leftOut);
    else await reach(shared.count);
    tell(answerOf(reached, true));
  };
}
