import { daysPerYear, hoursPerYear, OutOfRangeError } from '@wintergap/ground';
import { monthMeans, smoothThroughMonths } from '../make/monthly-smooth.js';
import { checkSeed, RandomStream } from '../make/random.js';
import type { Notice, WeatherYear } from '../weather-year.js';
import { type Anomaly, applyAnomaly } from './anomaly.js';
import { joinedSnow } from './snow.js';
import { createSunTransfer } from './sun.js';

export interface ResampleSettings {
  /** A whole number; with the year's number it fixes the year to the last bit. */
  seed: number;
  /** Days that are taken together, so that runs of dull days stay whole; 10 when left out. */
  blockDays?: number;
  /** How far from its own date a block may come, days either way; 20 when left out. */
  windowDays?: number;
  /** Adds a spread between years that blocks of few years cannot have. Left out: none. */
  anomaly?: Anomaly;
}

/**
 * Prepares many made years from one or several real ones: each is put together from blocks of days that come from
 * about the same date of any of the years (moving blocks, Kuensch 1989, Annals of Statistics 17, 1217-1241, kept
 * within the season). Year `n` depends only on the seed and on n, not on what was made before.
 *
 * Blocks carry their clearness, not their irradiance, so a day moved towards midwinter gets the lower sun; clearness and
 * temperature keep their standing in the season; snow depth grows and shrinks as in the block, from the depth that lay before it.
 *
 * Years from one year differ too little, since every one has the same few weeks to draw from. Measured with 100 years
 * from one typical year: the sunshine of the year has a standard deviation of 1.9 % (Chicago), 1.4 % (New York) and 2.6 %
 * (Mannheim), that of November to January 3.2, 3.7 and 9.1 %; the longest run of dull days is on average that of the
 * source and in the worst of the years about twice as long. Give several real years, or see `usualAnomaly`.
 *
 * @returns a function from the number of the year, 0 and up, to its weather
 */
export function createResampler(
  sources: readonly WeatherYear[],
  settings: ResampleSettings,
): (yearIndex: number) => WeatherYear {
  const { seed, blockDays = 10, windowDays = 20, anomaly } = settings;
  if (sources.length === 0) throw new OutOfRangeError('at least one weather year is needed to resample from, got none');
  checkSeed(seed);
  checkDays('blockDays', blockDays, 1);
  checkDays('windowDays', windowDays, 0);
  const place = sources[0]!.place;
  const sun = createSunTransfer(place, sources);
  const seasons = sources.map((source) => smoothThroughMonths(monthMeans(source.airC)));

  return (yearIndex) => {
    if (!Number.isInteger(yearIndex) || yearIndex < 0 || yearIndex > 0xffffffff) {
      throw new OutOfRangeError(`yearIndex must be a whole number from 0, got ${yearIndex}`);
    }
    const { fromYear, fromDay } = drawDays(
      sources.length,
      blockDays,
      windowDays,
      new RandomStream(seed, 11, yearIndex),
    );
    const year = {
      ghiWm2: new Float64Array(hoursPerYear),
      dniWm2: new Float64Array(hoursPerYear),
      dhiWm2: new Float64Array(hoursPerYear),
    };
    const airC = new Float64Array(hoursPerYear);
    for (let day = 0; day < daysPerYear; day++) {
      const source = sources[fromYear[day]!]!;
      const season = seasons[fromYear[day]!]!;
      const from = fromDay[day]! * 24;
      sun.moveDay(source, fromDay[day]!, year, day);
      for (let i = 0; i < 24; i++) {
        const h = day * 24 + i;
        airC[h] = source.airC[from + i]! - season[from + i]! + season[h]!;
      }
    }
    const notices: Notice[] = [
      {
        code: 'resampled-year',
        level: 'note',
        text: `blocks of ${blockDays} days from ${sources.length === 1 ? 'one year' : `${sources.length} years`}: years differ less than real ones do${anomaly ? ', but for the anomaly added' : ''}`,
      },
    ];
    if (anomaly) applyAnomaly(year, sun, anomaly, new RandomStream(seed, 12, yearIndex));
    const column = (pick: (source: WeatherYear) => Float64Array | null): Float64Array | null =>
      moved(sources, pick, fromYear, fromDay);
    return {
      source: `resampled from ${sources.map((source) => source.source).join(', ')}, seed ${seed}, year ${yearIndex}`,
      kind: 'made',
      place: { ...place },
      ...year,
      airC,
      windMs: column((source) => source.windMs)!,
      snowDepthM: joinedSnow(sources, fromYear, fromDay),
      precipitationMm: column((source) => source.precipitationMm),
      albedo: column((source) => source.albedo),
      relativeHumidity: column((source) => source.relativeHumidity),
      pressurePa: column((source) => source.pressurePa),
      splitFrom: sources.some((source) => source.splitFrom === 'erbs') ? 'erbs' : 'file',
      notices,
    };
  };
}

/** One year of `createResampler`. */
export function resampleYear(
  sources: WeatherYear | readonly WeatherYear[],
  settings: ResampleSettings & { yearIndex: number },
): WeatherYear {
  return createResampler('ghiWm2' in sources ? [sources] : sources, settings)(settings.yearIndex);
}

function checkDays(what: string, days: number, lowest: number): void {
  if (!Number.isInteger(days) || days < lowest || days > 182) {
    throw new OutOfRangeError(`${what} must be a whole number from ${lowest} to 182, got ${days}`);
  }
}

/** Which day of which year each day of the new year is taken from. */
function drawDays(
  years: number,
  blockDays: number,
  windowDays: number,
  random: RandomStream,
): { fromYear: Uint16Array; fromDay: Uint16Array } {
  const fromYear = new Uint16Array(daysPerYear);
  const fromDay = new Uint16Array(daysPerYear);
  // The first block is cut at random, so that blocks do not begin on the same dates every year.
  let end = 0;
  let year = 0;
  let shift = 0;
  for (let day = 0; day < daysPerYear; day++) {
    if (day === end) {
      end += day === 0 ? 1 + random.below(blockDays) : blockDays;
      year = random.below(years);
      shift = random.below(2 * windowDays + 1) - windowDays;
    }
    fromYear[day] = year;
    fromDay[day] = (day + shift + daysPerYear) % daysPerYear;
  }
  return { fromYear, fromDay };
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
