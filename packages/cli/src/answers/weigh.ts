import { weighText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { designOf, type SiteFile } from '@wintergap/site';
import { type SiteWeights, weighSite } from '@wintergap/study';
import { PreparedCache } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { standingJson, standingOf, withStanding } from '../output/standing.js';

export interface WeighOptions extends CommonYearsOptions, AcceptWeather {
  variant?: string;
  json?: boolean;
  units?: string;
}

export async function answerWeigh(site: SiteFile, options: WeighOptions): Promise<void> {
  const design = designOf(site, options.variant);
  const costs = readCosts(site);
  const units = unitsOption(options.units, design.units);
  const prepared = new PreparedCache();
  const standing = standingOf(design, prepared);
  const progress = countProgress('years');
  let weights: SiteWeights;
  try {
    weights = await weighSite(design, { ...commonWish(options), prepared, onYear: progress.reached }, costs);
  } finally {
    progress.stop();
  }
  const answer = options.json
    ? JSON.stringify({ ...weights, ...standingJson(standing) }, null, 2)
    : withStanding(standing, units, weighText(weights, units));
  print(`${answer}\n`);
}
