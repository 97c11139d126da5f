import { OutOfRangeError } from '@wintergap/ground';
import { tiltText } from '@wintergap/report';
import { designOf, type SiteFile } from '@wintergap/site';
import { type BestTilts, bestTilts } from '@wintergap/study';
import { PreparedCache } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { standingJson, standingOf, withStanding } from '../output/standing.js';

export interface TiltOptions extends AcceptWeather, CommonYearsOptions {
  array?: string;
  months?: string;
  variant?: string;
  json?: boolean;
  units?: string;
}

export async function answerTilt(site: SiteFile, options: TiltOptions): Promise<void> {
  const design = designOf(site, options.variant);
  const units = unitsOption(options.units, design.units);
  const months = monthsOption(options.months);
  const prepared = new PreparedCache();
  const standing = standingOf(design, prepared);
  const progress = countProgress('years');
  let tilts: BestTilts;
  try {
    const wish = { ...commonWish(options), prepared, onYear: progress.reached };
    tilts = await asInputError(options.array, () => bestTilts(design, options.array, months, wish));
  } finally {
    progress.stop();
  }
  const answer = options.json
    ? JSON.stringify({ ...tilts, ...standingJson(standing) }, null, 2)
    : withStanding(standing, units, tiltText(tilts, units));
  print(`${answer}\n`);
}

function monthsOption(list: string | undefined): number[] | undefined {
  if (list === undefined) return undefined;
  const months = [...new Set(list.split(',').map((month) => Number(month.trim() || Number.NaN)))];
  if (months.every((month) => Number.isInteger(month) && month >= 1 && month <= 12)) return months;
  throw new InputError(`--months ${list}: expected months from 1 to 12 with commas between, such as 11,12,1`);
}

/** An array that is not there, or has no tilt, is wrong use of the program. */
async function asInputError<Result>(array: string | undefined, make: () => Promise<Result>): Promise<Result> {
  try {
    return await make();
  } catch (error) {
    if (error instanceof OutOfRangeError) throw new InputError(`--array${array ? ` ${array}` : ''}: ${error.message}`);
    throw error;
  }
}
