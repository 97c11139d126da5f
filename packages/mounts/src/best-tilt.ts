import { OutOfRangeError } from '@wintergap/ground';
import type { TiltPeriod } from './mount.js';

/** Best of what a search tried; `score` is what the caller's function gave for it. */
export interface BestTilt {
  tiltDeg: number;
  score: number;
  trials: number;
}

export interface TwoTilts {
  tilts: [TiltPeriod, TiltPeriod];
  score: number;
  trials: number;
}

export interface TiltLimits {
  minTiltDeg: number;
  maxTiltDeg: number;
}

/**
 * The tilt with the highest score, to a whole degree: a look at every tenth degree, then steps of 5, 2 and 1 to either
 * side while they help. Asks about twenty times and never more than fifty. Scores need not be smooth: counts such as
 * generator hours (with a minus) will do; among equal scores the first one found stays.
 */
export function bestTilt(
  score: (tiltDeg: number) => number,
  { minTiltDeg, maxTiltDeg }: TiltLimits = { minTiltDeg: 0, maxTiltDeg: 90 },
): BestTilt {
  checkLimits(minTiltDeg, maxTiltDeg);
  const search = climb((at) => score(at[0]!), [minTiltDeg], [minTiltDeg], [maxTiltDeg], 50);
  for (let tilt = minTiltDeg + 10; tilt < maxTiltDeg; tilt += 10) search.visit([tilt]);
  search.visit([maxTiltDeg]);
  for (const step of [5, 2, 1]) search.descend([step]);
  return { tiltDeg: search.best[0]!, score: search.score(), trials: search.trials() };
}

/**
 * Two tilts and the days on which they are set, the winter's first, with the highest score: from the best single tilt,
 * 15 degrees steeper from 1 October and flatter from 1 April (the other way round in the southern hemisphere), then by
 * steps in one of the four at a time, each half as long as the last: tilts to 1 degree, days to 2. At most 250 trials.
 *
 * @param latitudeDeg of the place; its sign says which season is winter
 */
export function bestTwoTilts(
  score: (tilts: [TiltPeriod, TiltPeriod]) => number,
  latitudeDeg: number,
  { minTiltDeg, maxTiltDeg }: TiltLimits = { minTiltDeg: 0, maxTiltDeg: 90 },
): TwoTilts {
  checkLimits(minTiltDeg, maxTiltDeg);
  const [winterDay, summerDay] = latitudeDeg < 0 ? [90, 273] : [273, 90];
  const periods = (at: readonly number[]): [TiltPeriod, TiltPeriod] => [
    { fromDay: at[2]!, tiltDeg: at[0]! },
    { fromDay: at[3]!, tiltDeg: at[1]! },
  ];
  const single = bestTilt((tiltDeg) => score(periods([tiltDeg, tiltDeg, winterDay, summerDay])), {
    minTiltDeg,
    maxTiltDeg,
  });
  const steep = Math.min(maxTiltDeg, single.tiltDeg + 15);
  const flat = Math.max(minTiltDeg, single.tiltDeg - 15);
  // Each change moves within the two months on either side of its usual date, so the seasons never swap.
  const search = climb(
    (at) => score(periods(at)),
    [steep, flat, winterDay, summerDay],
    [minTiltDeg, minTiltDeg, winterDay - 60, summerDay - 60],
    [maxTiltDeg, maxTiltDeg, winterDay + 60, summerDay + 60],
    250 - single.trials,
  );
  search.visit([single.tiltDeg, single.tiltDeg, winterDay, summerDay]);
  for (const step of [8, 4, 2, 1]) search.descend([step, step, 2 * step, 2 * step]);
  return { tilts: periods(search.best), score: search.score(), trials: single.trials + search.trials() };
}

interface Climb {
  best: number[];
  score(): number;
  trials(): number;
  visit(at: readonly number[]): boolean;
  /** Steps to either side in one coordinate after the other, while any step helps. */
  descend(steps: readonly number[]): void;
}

function climb(
  ask: (at: readonly number[]) => number,
  start: readonly number[],
  low: readonly number[],
  high: readonly number[],
  mostTrials: number,
): Climb {
  // A score that is not a number is the worst there is.
  const rate = (at: readonly number[]): number => {
    const found = ask(at);
    return Number.isNaN(found) ? Number.NEGATIVE_INFINITY : found;
  };
  const best = [...start];
  let score = rate(best);
  let trials = 1;
  const visit = (at: readonly number[]): boolean => {
    if (trials >= mostTrials) return false;
    trials++;
    const found = rate(at);
    if (found <= score) return false;
    score = found;
    best.splice(0, best.length, ...at);
    return true;
  };
  const step = (i: number, by: number): boolean => {
    const to = Math.min(high[i]!, Math.max(low[i]!, best[i]! + by));
    return to !== best[i] && visit(best.with(i, to));
  };
  const descend = (steps: readonly number[]): void => {
    for (let helped = true; helped && trials < mostTrials; ) {
      helped = false;
      for (let i = 0; i < steps.length; i++) {
        const moved = step(i, steps[i]!) || step(i, -steps[i]!);
        helped ||= moved;
      }
    }
  };
  return { best, score: () => score, trials: () => trials, visit, descend };
}

function checkLimits(minTiltDeg: number, maxTiltDeg: number): void {
  if (!(minTiltDeg >= 0 && minTiltDeg <= maxTiltDeg && maxTiltDeg <= 90)) {
    throw new OutOfRangeError(`tilts must be limited within 0 to 90, got ${minTiltDeg} to ${maxTiltDeg}`);
  }
}
