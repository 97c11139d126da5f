import type { Site } from '@wintergap/site';
import type { TiltPeriod } from '@wintergap/year';
import { type CommonFigures, commonAnswer } from '../common/common-answer.js';
import type { CommonRun, CommonWish } from '../common/common-wish.js';
import { runDesigns } from '../common/run-designs.js';
import { snowRange } from '../common/snow-range.js';
import { type EngineTilts, engineTilts, type TiltCandidate } from './engine-tilts.js';
import { lightSearch } from './light-search.js';
import { type TiltTrials, tiltKey, tiltTrials } from './tilt-trials.js';

/** What a tilt catches most light for. */
export type TiltAim = 'year' | 'dark months';

/** One way to tilt an array: its light in the file's year, and what the engine does over the common years. */
export interface TiltChoice {
  tilts: TiltPeriod[];
  /** Light on the cells, after skyline, glass, snow and dirt, kWh/m2. */
  yearKWhM2: number;
  darkMonthsKWhM2: number;
  engine: Pick<CommonFigures, 'ranked' | 'generatorHours' | 'fuelLitres'>;
}

export interface BestTilts {
  siteName: string;
  array: string;
  mount: 'fixed' | 'pole';
  /** 1 to 12. */
  darkMonths: number[];
  /** The common years behind the engine hours. */
  weather: CommonRun['weather'];
  asDesigned: TiltChoice;
  /** One tilt all year, and two with the dates on which they are set, the dark season's first. */
  best: Record<TiltAim, { one: TiltChoice; two: TiltChoice }>;
  /** What the engine says of one tilt all year, and of the dark season's tilt where the bright season has its own. */
  engine: { one: EngineTilts; dark: EngineTilts & { bright: TiltPeriod; from: number } };
}

/** Steps in which tilts are tried for the engine, degrees: finer ones chance alone tells apart. */
const stepDeg = 5;
const flattestDeg = 15;

/**
 * The best tilts of one array: by light on its cells in the file's year, and by engine hours over common years, the rest
 * of the design staying as it is.
 *
 * Light by date is that of single-tilt years put together day by day. Engine hours come in whole runs, so they are told
 * over many years, in steps of five degrees, and as the range of tilts that chance does not tell apart.
 *
 * @param arrayName which array; the first with a tilt to choose unless given
 * @param monthsWanted 1 to 12; the three with the least sun for the load unless given
 * @throws OutOfRangeError when there is no such array, or its mount leaves no tilt to choose
 */
export async function bestTilts(
  design: Site,
  arrayName?: string,
  monthsWanted?: readonly number[],
  wish: CommonWish = {},
): Promise<BestTilts> {
  const trials = tiltTrials(design, arrayName);
  const darkMonths = monthsWanted ?? trials.darkSeason.months;
  const light = lightSearch(trials, darkMonths, design.place.latitude);
  const asDesigned = trials.tiltsAsDesigned;
  const [dark, bright] = seasonsOf(asDesigned, light.best.year.two);

  const singles = tiltsToTry(trials.limits, [asDesigned, light.best.year.one, light.best['dark months'].one]);
  const ofOne = (tiltDeg: number) => [{ fromDay: 0, tiltDeg }];
  const ofDark = (tiltDeg: number) => [{ ...dark, tiltDeg }, bright];
  const steep = tiltsToTry(trials.limits, asDesigned.length === 2 ? [[dark]] : [light.best['dark months'].one]).filter(
    (tiltDeg) => tiltDeg >= bright.tiltDeg,
  );
  const candidates = (tilts: readonly number[], of: (tiltDeg: number) => TiltPeriod[]): TiltCandidate[] =>
    tilts.map((tiltDeg) => ({ tiltDeg, name: tiltKey(of(tiltDeg)), darkLight: light.dark(of(tiltDeg)) }));
  const one = candidates(singles, ofOne);
  const two = candidates(steep, ofDark);

  const grid = [...singles.map(ofOne), ...steep.map(ofDark)];
  const choices = [asDesigned, ...Object.values(light.best).flatMap((of) => [of.one, of.two])];
  const named = new Map([...grid, ...choices].map((tilts) => [tiltKey(tilts), trials.designAt(tilts)]));
  const run = await runDesigns(
    Array.from(named, ([name, site]) => ({ name, site })),
    wish,
  );
  const gridNames = [...new Set(grid.map(tiltKey))];
  const snow = trials.snowLies
    ? await snowRange(
        gridNames.map((name) => ({ name, site: named.get(name)! })),
        [],
        wish,
      )
    : null;

  const figures = new Map(commonAnswer(run).designs.map((of) => [of.name, of]));
  const choice = (tilts: TiltPeriod[]): TiltChoice => ({
    tilts,
    yearKWhM2: light.year(tilts),
    darkMonthsKWhM2: light.dark(tilts),
    engine: figures.get(tiltKey(tilts))!,
  });
  const bestOf = (aim: TiltAim) => ({ one: choice(light.best[aim].one), two: choice(light.best[aim].two) });
  const designedOne = asDesigned.length === 1 ? asDesigned[0]!.tiltDeg : null;
  const designedDark = asDesigned.length === 2 ? dark.tiltDeg : null;
  return {
    siteName: design.name,
    array: trials.arrayName,
    mount: trials.mount,
    darkMonths: [...darkMonths],
    weather: run.weather,
    asDesigned: choice(asDesigned),
    best: { year: bestOf('year'), 'dark months': bestOf('dark months') },
    engine: {
      one: engineTilts(one, run, snow, designedOne),
      dark: { ...engineTilts(two, run, snow, designedDark), bright, from: dark.fromDay },
    },
  };
}

/** The dark season's tilt and the bright season's: of the design where it has two, otherwise those with the most light. */
function seasonsOf(asDesigned: readonly TiltPeriod[], brightest: readonly TiltPeriod[]): [TiltPeriod, TiltPeriod] {
  const [first, second] = asDesigned.length === 2 ? asDesigned : brightest;
  return first!.tiltDeg >= second!.tiltDeg ? [first!, second!] : [second!, first!];
}

/** Every fifth degree, and the whole-year tilts given, flattest first. */
function tiltsToTry({ fromDeg, toDeg }: TiltTrials['limits'], besides: readonly (readonly TiltPeriod[])[]): number[] {
  const tilts = new Set(besides.filter((periods) => periods.length === 1).map((periods) => periods[0]!.tiltDeg));
  for (let tilt = Math.max(flattestDeg, Math.ceil(fromDeg / stepDeg) * stepDeg); tilt <= toDeg; tilt += stepDeg) {
    tilts.add(tilt);
  }
  return [...tilts].sort((one, other) => one - other);
}
