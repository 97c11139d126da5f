import { monthSpan, OutOfRangeError } from '@wintergap/ground';
import { type Costs, ratedKW, withScaledArray } from '@wintergap/seasonal';
import type { Site } from '@wintergap/site';
import { bankFacts, simulateSite } from '@wintergap/year';
import { type CommonAnswer, type CommonFigures, commonAnswer } from '../common/common-answer.js';
import type { CommonRun, CommonWish, NamedSite } from '../common/common-wish.js';
import { meritDifference, meritOf } from '../common/merit.js';
import { overLimits } from '../common/over-limits.js';
import type { PairedDifference } from '../common/paired-difference.js';
import { runDesigns, runUntilClear } from '../common/run-designs.js';
import { type SnowRange, snowRange } from '../common/snow-range.js';
import { type CostAgainst, costAgainst, costOfYears } from '../compare/design-costs.js';
import { lightOn, lightSearch } from '../tilt/light-search.js';
import { tiltTrials } from '../tilt/tilt-trials.js';
import { type MountWay, mountWays, withMount } from './mount-designs.js';
import type { MountPrices } from './mount-prices.js';

/** What one way of mounting does over the common years, and in the file's year. */
export interface MountRow {
  name: string;
  kind: MountWay['kind'];
  figures: CommonFigures;
  /** Against the fixed mount, year by year; `null` for it. */
  againstFixed: PairedDifference | null;
  /** Light on the cells in the dark months of the file's year, kWh/m2. */
  darkMonthsKWhM2: number;
  yearKWhM2: number;
  /** Mean engine hours when it is stuck through the dark season; `null` where nothing moves. */
  stuckHours: number | null;
  /**
   * What it may cost more than the fixed mount over the comparison, upkeep and repair included: the fuel, service and wear of
   * the engine that it saves, present value; `null` for the fixed mount and without prices.
   */
  worth: number | null;
  /** What the design costs more with it than with the fixed mount, the mounts' prices included as far as they are known. */
  costAgainstFixed: CostAgainst | null;
  /** Its price, where the site file has one. */
  price: number | null;
}

/** Fixed, seasonal, pole or axes at one site with the same modules. */
export interface MountStudy {
  siteName: string;
  array: string;
  /** 1 to 12. */
  darkMonths: number[];
  answer: CommonAnswer;
  rows: MountRow[];
  snow: SnowRange | null;
  /**
   * How much larger a fixed array does what the best tracking mount does, as a multiple; `null` where the fixed one does
   * as well, three times as much would not, or the design exceeds a limit.
   */
  moreFixed: { than: string; scale: number; moreKW: number } | null;
  /** Terms of money. */
  years: number | null;
  currency: string | null;
}

/** Steps of tilt tried for the fixed mount, degrees. */
const fixedTilts = [40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90];
/** Largest fixed array tried, as a multiple. */
const largestFixed = 3;

/**
 * Runs one array of a design on each mount over the same weather years.
 *
 * @param arrayName which array; the first that stands unless given
 * @param prices of mounts, by kind; without a mount's price the answer says what it may cost
 * @throws OutOfRangeError when there is no such array
 */
export async function mountStudy(
  design: Site,
  arrayName: string | undefined,
  costs: Costs | null,
  wish: CommonWish = {},
  prices: MountPrices = new Map(),
): Promise<MountStudy> {
  const array = arrayToMount(design, arrayName);
  const { latitude } = design.place;
  const azimuth = latitude < 0 ? 0 : 180;
  const onFixed = (tilt: number) => withMount(design, array, { kind: 'fixed', tilt, azimuth });
  const trials = tiltTrials(onFixed(60), array.name);
  const darkMonths = trials.darkSeason.months;
  const light = lightSearch(trials, darkMonths, latitude);
  const fixedDeg = await bestFixed(onFixed, wish);
  const [steep, flat] = light.best.year.two;
  const ways = mountWays(latitude, {
    fixedDeg,
    seasons: [{ ...steep!, tiltDeg: Math.max(fixedDeg, flat!.tiltDeg) }, flat!],
    darkDays: daysOf(darkMonths),
  });

  const sites: NamedSite[] = ways.map(({ name, mount }) => ({
    name,
    site: withMount(design, array, { ...mount, ...prices.get(mount.kind) } as SiteArray['mount']),
  }));
  const leftOut = overLimits(sites, wish.prepared);
  const run = await runUntilClear(sites, wish, leftOut);
  const answer = commonAnswer(run, leftOut);
  const snow = trials.snowLies && answer.leaders.length > 0 ? await snowRange(sites, answer.leaders, wish) : null;
  const stuck = await stuckHours(design, array, ways, wish);
  const merit = meritOf(run.designs);
  const fixed = run.designs[0]!;
  const money = moneyOf(sites, run, design, array, costs);
  const rows = ways.map(({ name, kind, mount }, i): MountRow => {
    const figures = answer.designs[i]!;
    const lit = trials.lightOf(sites[i]!.site);
    const whole = [{ fromDay: 0, tiltDeg: 0 }];
    return {
      name,
      kind,
      figures,
      againstFixed: i === 0 ? null : meritDifference(run.designs[i]!, fixed, merit),
      darkMonthsKWhM2: lightOn(whole, () => lit, darkMonths),
      yearKWhM2: lightOn(whole, () => lit, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]),
      stuckHours: stuck.get(name) ?? null,
      worth: money[i]!.worth && -money[i]!.worth!.mean,
      costAgainstFixed: money[i]!.cost,
      price: mountPrice(prices.get(mount.kind)?.price, sites[i]!.site, array.name),
    };
  });
  return {
    siteName: design.name,
    array: array.name,
    darkMonths: [...darkMonths],
    answer,
    rows,
    snow,
    moreFixed: answer.leftOut.length > 0 ? null : await moreFixed(sites[0]!, rows, array, wish),
    years: costs?.years ?? null,
    currency: design.costs?.currency ?? null,
  };
}

type SiteArray = Site['arrays'][number];

/** A mount's price in money, where it may be written per kW of its array. */
function mountPrice(price: SiteArray['mount']['price'], { arrays }: Site, name: string): number | null {
  if (price === undefined || typeof price === 'number') return price ?? null;
  return price.perKW * ratedKW({ arrays: arrays.filter((one) => one.name === name) });
}

function arrayToMount({ arrays }: Site, wanted: string | undefined): SiteArray {
  const standing = arrays.filter(({ strings }) => strings > 0);
  const array = wanted === undefined ? standing[0] : standing.find(({ name }) => name === wanted);
  if (array) return array;
  const names = standing.map(({ name }) => name).join(', ') || 'none';
  throw new OutOfRangeError(
    wanted === undefined
      ? 'no array stands, so there is no mount to choose'
      : `no array is called "${wanted}"; there are ${names}`,
  );
}

/** The fixed tilt with the least mean of engine hours, or of dark load. */
async function bestFixed(onFixed: (tilt: number) => Site, wish: CommonWish): Promise<number> {
  const { designs } = await runDesigns(
    fixedTilts.map((tilt) => ({ name: `${tilt}`, site: onFixed(tilt) })),
    wish,
  );
  const merit = meritOf(designs);
  const sums = designs.map(({ years }) => years.reduce((sum, year) => sum + year[merit], 0));
  return fixedTilts[sums.indexOf(Math.min(...sums))]!;
}

async function stuckHours(
  design: Site,
  array: SiteArray,
  ways: readonly MountWay[],
  wish: CommonWish,
): Promise<Map<string, number>> {
  const moving = ways.flatMap(({ name, stuck }) => (stuck ? [{ name, site: withMount(design, array, stuck) }] : []));
  const { designs } = await runDesigns(moving, wish);
  return new Map(designs.map((of) => [of.name, meanHours(of)]));
}

const meanHours = ({ years }: CommonRun['designs'][number]): number =>
  years.reduce((sum, { generatorHours }) => sum + generatorHours, 0) / years.length;

/** What each way costs beside the first, and what its mount may cost: all but the mounts themselves, compared. */
function moneyOf(sites: readonly NamedSite[], run: CommonRun, design: Site, array: SiteArray, costs: Costs | null) {
  if (!costs) return sites.map(() => ({ worth: null, cost: null }));
  const life = bankFacts(simulateSite(design)).wear.yearsTo80;
  const freeMount = { price: 0, upkeep: 0 };
  const costOf = (site: Site, i: number) => costOfYears(site, usesOf(run.designs[i]!), costs, life);
  const free = sites.map(({ site }, i) => {
    const bare = site.arrays.map((one) =>
      one.name === array.name ? { ...one, mount: { ...one.mount, ...freeMount } } : one,
    );
    return costOf({ ...site, arrays: bare }, i);
  });
  const whole = sites.map(({ site }, i) => costOf(site, i));
  return sites.map((_, i) => ({
    worth: i === 0 ? null : (costAgainst(free[i]!, free[0]!)?.difference ?? null),
    cost: i === 0 ? null : costAgainst(whole[i]!, whole[0]!),
  }));
}

const usesOf = ({ years }: CommonRun['designs'][number]) =>
  years.map(({ generatorHours, fuelLitres }) => ({ hours: generatorHours, fuelLitres }));

/** The larger fixed array that runs the engine as little as the best tracking mount, by halving, to 2 %. */
async function moreFixed(
  fixed: NamedSite,
  rows: readonly MountRow[],
  array: SiteArray,
  wish: CommonWish,
): Promise<MountStudy['moreFixed']> {
  const tracking = rows.filter(({ kind }) => kind === 'tracking');
  const hoursOf = ({ figures }: MountRow) => figures.generatorHours.mean;
  const best = tracking.reduce((least, row) => (hoursOf(row) < hoursOf(least) ? row : least));
  if (best.againstFixed?.verdict !== 'less') return null;
  const hoursAt = async (scale: number) => {
    const only = { ...fixed.site, arrays: fixed.site.arrays.filter(({ name }) => name === array.name) };
    const larger = withScaledArray(only, scale).arrays[0]!;
    const site = { ...fixed.site, arrays: fixed.site.arrays.map((one) => (one.name === array.name ? larger : one)) };
    return meanHours((await runDesigns([{ name: 'larger', site }], wish)).designs[0]!);
  };
  if ((await hoursAt(largestFixed)) > hoursOf(best)) return null;
  let low = 1;
  let high: number = largestFixed;
  while (high - low > 0.02 * low) {
    const middle = (low + high) / 2;
    if ((await hoursAt(middle)) > hoursOf(best)) low = middle;
    else high = middle;
  }
  const { strings, inSeries, module } = array;
  return { than: best.name, scale: high, moreKW: ((high - 1) * strings * inSeries * module.vmp * module.imp) / 1000 };
}

/** First and last day of months that follow one another, across New Year too. */
function daysOf(months: readonly number[]): { from: number; to: number } {
  const isIn = (month: number) => months.includes(month);
  const first = months.find((month) => !isIn(((month + 10) % 12) + 1)) ?? months[0]!;
  let last = first;
  while (isIn((last % 12) + 1) && (last % 12) + 1 !== first) last = (last % 12) + 1;
  return { from: monthSpan(first - 1).fromDay, to: monthSpan(last - 1).toDay - 1 };
}
