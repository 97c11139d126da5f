import { OutOfRangeError } from '@wintergap/ground';
import { mountText, withStop } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { designOf, type SiteFile } from '@wintergap/site';
import { type MountStudy, mountPricesOf, mountStudy } from '@wintergap/study';
import { limitCautions, PreparedCache, siteLimits } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { trustJson, trustOf, withTrust } from '../output/weather-trust.js';

export interface MountOptions extends AcceptWeather, CommonYearsOptions {
  array?: string;
  variant?: string;
  json?: boolean;
}

export async function answerMount(site: SiteFile, options: MountOptions): Promise<void> {
  const design = designOf(site, options.variant);
  const costs = readCosts(site);
  const prepared = new PreparedCache();
  const trust = trustOf(design, prepared);
  const limits = siteLimits(design, prepared);
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
    const document = { weather: trustJson(trust), cautions: limitCautions(limits), ...study };
    print(`${JSON.stringify(document, null, 2)}\n`);
  } else print(`${withTrust(trust, withStop(limits, design.units, mountText(study)))}\n`);
}
