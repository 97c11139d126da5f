import { OutOfRangeError } from '@wintergap/ground';
import { mountText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { designOf, type SiteFile } from '@wintergap/site';
import { type MountStudy, mountPricesOf, mountStudy } from '@wintergap/study';
import { PreparedCache } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { standingJson, standingOf, withStanding } from '../output/standing.js';

export interface MountOptions extends AcceptWeather, CommonYearsOptions {
  array?: string;
  variant?: string;
  json?: boolean;
}

export async function answerMount(site: SiteFile, options: MountOptions): Promise<void> {
  const design = designOf(site, options.variant);
  const costs = readCosts(site);
  const prepared = new PreparedCache();
  const standing = standingOf(design, prepared);
  const wish = { ...commonWish(options), prepared };
  const progress = countProgress('years');
  let study: MountStudy;
  try {
    const prices = mountPricesOf(site, options.array);
    study = await mountStudy(design, options.array, costs, { ...wish, onYear: progress.reached }, prices);
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    throw new InputError(`--array${options.array ? ` ${options.array}` : ''}: ${error.message}`);
  } finally {
    progress.stop();
  }
  if (options.json) {
    const { cautions, trust } = standingJson(standing);
    print(`${JSON.stringify({ weather: trust, cautions, ...study }, null, 2)}\n`);
  } else print(`${withStanding(standing, design.units, mountText(study))}\n`);
}
