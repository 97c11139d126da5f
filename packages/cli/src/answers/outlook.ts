import { availableParallelism } from 'node:os';
import { outlookText } from '@wintergap/report';
import { designOf } from '@wintergap/site';
import { type Outlook, type OutlookWish, outlookOf, outlookWeather } from '@wintergap/study';
import { PreparedCache } from '@wintergap/year';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import { unitsOption } from '../options/units-option.js';
import { wholeOption } from '../options/whole-option.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { standingJson, standingOf, withStanding } from '../output/standing.js';
import { loadAccepting } from '../site/load-accepting.js';

export interface OutlookOptions extends AcceptWeather {
  years?: string;
  seed: string;
  spread?: string;
  workers?: string;
  variant?: string;
  json?: boolean;
  units?: string;
}

export async function answerOutlook(file: string, options: OutlookOptions): Promise<void> {
  const wish: OutlookWish = {
    ...(options.years !== undefined && { years: wholeOption('--years', options.years, 1, 10_000) }),
    seed: wholeOption('--seed', options.seed, 0, 2 ** 32),
    ...(options.spread !== undefined && { spread: spreadOption(options.spread) }),
  };
  const workers =
    options.workers === undefined ? availableParallelism() : wholeOption('--workers', options.workers, 1, 256);
  const site = designOf(loadAccepting(file, options), options.variant);
  const units = unitsOption(options.units, site.units);
  const prepared = new PreparedCache();
  const standing = standingOf(site, prepared);
  const progress = countProgress('years');
  let outlook: Outlook;
  try {
    const task = { site, weather: outlookWeather(site, wish) };
    outlook = await outlookOf(task, { workers, onYear: progress.reached });
  } finally {
    progress.stop();
  }
  const answer = options.json
    ? JSON.stringify({ ...outlook, ...standingJson(standing) }, null, 2)
    : withStanding(standing, units, outlookText(outlook, units));
  print(`${answer}\n`);
}

function spreadOption(text: string): number {
  const factor = Number(text);
  if (text.trim() !== '' && factor >= 0 && factor <= 3) return factor;
  throw new InputError(`--spread: expected a number from 0 to 3, got '${text}'`);
}
