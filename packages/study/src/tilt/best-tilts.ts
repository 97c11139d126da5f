import type { Site } from '@wintergap/site';
import { bestTilt, bestTwoTilts, type TiltPeriod } from '@wintergap/year';
import { engineScore, lightOn, type TiltTrial, tiltTrials } from './tilt-trials.js';

/** What a tilt is best for. */
export type TiltAim = 'year' | 'dark months' | 'engine';

/** One way to tilt an array and the year it makes. */
export interface TiltChoice extends Omit<TiltTrial, 'dailyWhM2'> {
  tilts: TiltPeriod[];
  /** Light on the cells, after skyline, glass, snow and dirt, kWh/m2. */
  yearKWhM2: number;
  darkMonthsKWhM2: number;
}

export interface BestTilts {
  siteName: string;
  array: string;
  mount: 'fixed' | 'pole';
  /** 1 to 12. */
  darkMonths: number[];
  asDesigned: TiltChoice;
  /** One tilt all year, and two with the dates on which they are set, the dark season's first. */
  best: Record<TiltAim, { one: TiltChoice; two: TiltChoice }>;
  /**
   * Single tilts tried around the best whose engine hours are within two runs of its own: hours are lumpy, and chance
   * picks among these. `null` without engine hours.
   */
  alike: { fromDeg: number; toDeg: number; withinHours: number } | null;
  runs: number;
}

/** Share by which the light of the whole year counts where the dark months decide: enough to settle what they leave open. */
const yearBesideDark = 1e-3;
/** Two-tilt years that are run in search of the fewest engine hours; the light needs none of its own. */
const mostTwoTiltRuns = 30;
/** Runs of the engine by which two designs must differ to be told apart. */
const lumpyRuns = 2;

/**
 * The best tilts of one array by light on its cells and by engine hours, the rest of the design staying as it is.
 *
 * Light by date is that of single-tilt years put together day by day, so only the engine needs years of their own.
 *
 * @param arrayName which array; the first with a tilt to choose unless given
 * @param monthsWanted 1 to 12; the three with the least sun for the load unless given
 * @throws OutOfRangeError when there is no such array, or its mount leaves no tilt to choose
 */
export function bestTilts(
  design: Site,
  arrayName?: string,
  monthsWanted?: readonly number[],
  onRun: (done: number) => void = () => {},
): BestTilts {
  const trials = tiltTrials(design, arrayName, onRun);
  const darkMonths = monthsWanted ?? trials.darkSeason.months;
  const { latitude } = design.place;
  const single = (tiltDeg: number) => trials.at([{ fromDay: 0, tiltDeg }]);
  const everyMonth = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
  const yearLight = (of: readonly TiltPeriod[]) => lightOn(of, trials.at, everyMonth);
  const darkLight = (of: readonly TiltPeriod[]) => lightOn(of, trials.at, darkMonths);

  const choice = (trial: TiltTrial, tilts: TiltPeriod[]): TiltChoice => {
    const whole = [{ fromDay: 0, tiltDeg: 0 }];
    const { dailyWhM2, ...rest } = trial;
    return {
      ...rest,
      tilts,
      yearKWhM2: lightOn(whole, () => trial, everyMonth),
      darkMonthsKWhM2: lightOn(whole, () => trial, darkMonths),
    };
  };
  const best = (score: (tilts: readonly TiltPeriod[]) => number) => {
    const one = [{ fromDay: 0, tiltDeg: bestTilt((tiltDeg) => score([{ fromDay: 0, tiltDeg }])).tiltDeg }];
    const two = bestTwoTilts(score, latitude).tilts;
    return { one: choice(trials.at(one), one), two: choice(trials.at(two), two) };
  };

  const year = best(yearLight);
  const dark = best((tilts) => darkLight(tilts) + yearBesideDark * yearLight(tilts));
  const runsBefore = trials.runs();
  const searched = best((tilts) =>
    trials.isKnown(tilts) || tilts.length === 1 || trials.runs() < runsBefore + mostTwoTiltRuns
      ? engineScore(trials.at(tilts))
      : Number.NEGATIVE_INFINITY,
  );
  const asDesigned = choice(trials.asDesigned, trials.tiltsAsDesigned);
  // Hours are lumpy, and a search can stop on a lump: what light or the designer chose may be as good.
  const least = (how: 'one' | 'two', count: number) =>
    [searched[how], dark[how], year[how], asDesigned]
      .filter(({ tilts }) => tilts.length === count)
      .reduce((found, other) => (engineScore(other) > engineScore(found) ? other : found));
  const engine = { one: least('one', 1), two: least('two', 2) };
  // The designer's tilt may lie between the whole degrees that were tried.
  single(engine.one.tilts[0]!.tiltDeg);
  return {
    siteName: design.name,
    array: trials.arrayName,
    mount: trials.mount,
    darkMonths: [...darkMonths],
    asDesigned,
    best: { year, 'dark months': dark, engine },
    alike: alikeTilts(
      engine.one,
      trials.singles().map((tiltDeg) => ({ tiltDeg, trial: single(tiltDeg) })),
    ),
    runs: trials.runs(),
  };
}

function alikeTilts(
  { outcome: least, tilts }: TiltChoice,
  tried: readonly { tiltDeg: number; trial: TiltTrial }[],
): BestTilts['alike'] {
  if (least.starts === 0) return null;
  const withinHours = (lumpyRuns * least.generatorHours) / least.starts;
  const isAlike = ({ outcome }: TiltTrial) => outcome.generatorHours <= least.generatorHours + withinHours;
  const sorted = [...tried].sort((one, other) => one.tiltDeg - other.tiltDeg);
  const at = sorted.findIndex(({ tiltDeg }) => tiltDeg === tilts[0]!.tiltDeg);
  let from = at;
  while (from > 0 && isAlike(sorted[from - 1]!.trial)) from--;
  let to = at;
  while (to < sorted.length - 1 && isAlike(sorted[to + 1]!.trial)) to++;
  return { fromDeg: sorted[from]!.tiltDeg, toDeg: sorted[to]!.tiltDeg, withinHours };
}
