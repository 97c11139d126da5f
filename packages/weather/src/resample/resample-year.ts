import { daysPerYear, hoursPerYear, monthStartHour, mustLie, OutOfRangeError } from '@wintergap/ground';
import { monthMeans, smoothThroughMonths } from '../make/monthly-smooth.js';
import { checkSeed, RandomStream } from '../make/random.js';
import type { MonthSpread } from '../spread.js';
import type { Notice, WeatherYear } from '../weather-year.js';
import { type DrawnDays, drawDays } from './draw-days.js';
import { exchangeDays } from './exchange-days.js';
import { createMonthTargets } from './month-targets.js';
import { joinedSnow } from './snow.js';
import { createSunTransfer } from './sun.js';

export interface ResampleSettings {
  /** A whole number; with the year's number it fixes the year to the last bit. */
  seed: number;
  /** Days that are taken together, so that runs of dull days stay whole; 10 when left out. */
  blockDays?: number;
  /** How far from its own date a block may come, days either way; 20 when left out. */
  windowDays?: number;
  /**
   * Spread of the months' sunshine between years, in multiples of what the sources show, or of the one measured
   * elsewhere when there is one source alone; 0 to 3, 1 when left out. Blocks of few years have some spread of their
   * own, which is not taken away: 0 leaves it at that.
   */
  spread?: number;
}

/** Weather years resampled from others. */
export interface Resampler {
  /** The year with this number, 0 and up. */
  yearOf(yearIndex: number): WeatherYear;
  /** The spread that its years are given; `null` when none is, for `spread: 0` or an unknown place. */
  spread: MonthSpread | null;
}

/**
 * Prepares many made years from one or several real ones: each is put together from blocks of days that come from
 * about the same date of any of the years (moving blocks, Kuensch 1989, Annals of Statistics 17, 1217-1241, kept
 * within the season). Year `n` depends only on the seed and on n, not on what was made before.
 *
 * Blocks carry their clearness, not their irradiance, so a day moved towards midwinter gets the lower sun; clearness and
 * temperature keep their standing in the season; snow depth grows and shrinks as in the block, from the depth that lay before it.
 *
 * Years put together from one year differ too little, since every one has the same few weeks to draw from. So each month
 * gets a wanted sum of sunshine, drawn about the mean of the sources' with the spread that real months have, and
 * meets it by exchanging days for duller or clearer ones.
 *
 * @throws RangeError for settings out of range, or when a spread is asked for and the place of the sources is not known
 */
export function createResampler(sources: readonly WeatherYear[], settings: ResampleSettings): Resampler {
  const { seed, blockDays = 10, windowDays = 20, spread: times } = settings;
  if (sources.length === 0) throw new OutOfRangeError('at least one weather year is needed to resample from, got none');
  checkSeed(seed);
  checkDays('blockDays', blockDays, 1);
  checkDays('windowDays', windowDays, 0);
  mustLie('spread', times ?? 1, 0, 3);
  const place = sources[0]!.place;
  const sun = createSunTransfer(place, sources);
  if (!sun.clearDays && times)
    throw new OutOfRangeError('a spread needs latitude, longitude and utcOffsetH of the place');
  const seasons = sources.map((source) => smoothThroughMonths(monthMeans(source.airC)));
  const window = { years: sources.length, blockDays, windowDays };
  const sumOf = (year: number, fromDay: number, day: number): number => sun.movedSum(sources[year]!, fromDay, day);
  const targets =
    sun.clearDays && createMonthTargets(window, sumOf, sun.clearDays, times ?? 1, sources.some(isTypical));

  /** Which day of which source each day is, the months brought to their wanted sums. */
  const daysOf = (yearIndex: number): DrawnDays => {
    const drawn = drawDays(window, new RandomStream(seed, 11, yearIndex));
    if (!targets) return drawn;
    const wanted = targets.draw(drawn, new RandomStream(seed, 12, yearIndex));
    const random = new RandomStream(seed, 13, yearIndex);
    for (let m = 0; m < 12; m++) {
      exchangeDays(drawn, window, monthStartHour[m]! / 24, monthStartHour[m + 1]! / 24, wanted[m]!, sumOf, random);
    }
    return drawn;
  };
  const yearOf = (yearIndex: number): WeatherYear => {
    if (!Number.isInteger(yearIndex) || yearIndex < 0 || yearIndex > 0xffffffff) {
      throw new OutOfRangeError(`yearIndex must be a whole number from 0, got ${yearIndex}`);
    }
    const { fromYear, fromDay } = daysOf(yearIndex);
    const year = {
      ghiWm2: new Float64Array(hoursPerYear),
      dniWm2: new Float64Array(hoursPerYear),
      dhiWm2: new Float64Array(hoursPerYear),
    };
    for (const [day, from] of fromDay.entries()) sun.moveDay(sources[fromYear[day]!]!, from, year, day);
    const column = (pick: (source: WeatherYear) => Float64Array | null): Float64Array | null =>
      moved(sources, pick, fromYear, fromDay);
    return {
      source: `resampled from ${sources.map((source) => source.source).join(', ')}, seed ${seed}, year ${yearIndex}${times === undefined || times === 1 ? '' : `, spread ${times}`}`,
      kind: 'made',
      place: { ...place },
      ...year,
      airC: movedAir(sources, seasons, fromYear, fromDay),
      windMs: column((source) => source.windMs)!,
      snowDepthM: joinedSnow(sources, fromYear, fromDay),
      precipitationMm: column((source) => source.precipitationMm),
      albedo: column((source) => source.albedo),
      relativeHumidity: column((source) => source.relativeHumidity),
      pressurePa: column((source) => source.pressurePa),
      splitFrom: sources.some((source) => source.splitFrom === 'erbs') ? 'erbs' : 'file',
      notices: [noticeOf(sources.length, blockDays, targets?.spread ?? null)],
    };
  };
  return { yearOf, spread: targets?.spread ?? null };
}

/** Air that is as far from its season where it comes to as where it came from, degC. */
function movedAir(
  sources: readonly WeatherYear[],
  seasons: readonly Float64Array[],
  fromYear: Uint16Array,
  fromDay: Uint16Array,
): Float64Array {
  const airC = new Float64Array(hoursPerYear);
  for (let day = 0; day < daysPerYear; day++) {
    const source = sources[fromYear[day]!]!;
    const season = seasons[fromYear[day]!]!;
    const from = fromDay[day]! * 24;
    for (let i = 0; i < 24; i++) {
      const h = day * 24 + i;
      airC[h] = source.airC[from + i]! - season[from + i]! + season[h]!;
    }
  }
  return airC;
}

/** One year of `createResampler`. */
export function resampleYear(
  sources: WeatherYear | readonly WeatherYear[],
  settings: ResampleSettings & { yearIndex: number },
): WeatherYear {
  return createResampler('ghiWm2' in sources ? [sources] : sources, settings).yearOf(settings.yearIndex);
}

/** Typical years and years made from means have ordinary months by construction. */
const isTypical = ({ kind, notices }: WeatherYear): boolean =>
  kind === 'made' || kind === 'tmy3' || notices.some(({ code }) => code === 'typical-year');

function checkDays(what: string, days: number, lowest: number): void {
  if (!Number.isInteger(days) || days < lowest || days > 182) {
    throw new OutOfRangeError(`${what} must be a whole number from ${lowest} to 182, got ${days}`);
  }
}

function noticeOf(sources: number, blockDays: number, spread: MonthSpread | null): Notice {
  const from = `blocks of ${blockDays} days from ${sources === 1 ? 'one year' : `${sources} years`}`;
  const differ =
    spread === null
      ? 'years differ less than real ones do'
      : spread.from === 'years'
        ? 'months differ as much as in those years'
        : 'months differ as much as measured ones of another place';
  return { code: 'resampled-year', level: 'note', text: `${from}: ${differ}` };
}

/** An hourly column put together from the drawn days; `null` unless every source has it. */
function moved(
  sources: readonly WeatherYear[],
  pick: (source: WeatherYear) => Float64Array | null,
  fromYear: Uint16Array,
  fromDay: Uint16Array,
): Float64Array | null {
  const columns = sources.map(pick);
  if (columns.includes(null)) return null;
  const hours = new Float64Array(hoursPerYear);
  for (let day = 0; day < daysPerYear; day++) {
    const from = fromDay[day]! * 24;
    hours.set(columns[fromYear[day]!]!.subarray(from, from + 24), day * 24);
  }
  return hours;
}
