import {
  type CommonAnswer,
  type CommonFigures,
  type CommonWish,
  commonAnswer,
  type NamedSite,
  runUntilClear,
} from '@wintergap/study';
import { exceededLimits, PreparedCache, siteLimits } from '@wintergap/year';
import type { CommonYearsOptions } from './common-years-options.js';
import { countProgress } from './progress.js';
import { wholeOption } from './whole-option.js';

/** The options as the study takes them. */
export function commonWish({ years, seed, workers }: CommonYearsOptions): CommonWish {
  return {
    ...(years !== undefined && { years: wholeOption('--years', years, 1, 10_000) }),
    ...(seed !== undefined && { seed: wholeOption('--seed', seed, 0, 2 ** 32) }),
    ...(workers !== undefined && { workers: wholeOption('--workers', workers, 1, 256) }),
  };
}

/** Runs designs over common years, with a bar on stderr while it lasts; the first design is the base. */
export async function commonYearsOf(designs: readonly NamedSite[], options: CommonYearsOptions): Promise<CommonAnswer> {
  const wish = commonWish(options);
  const progress = countProgress('years');
  try {
    return commonAnswer(await runUntilClear(designs, { ...wish, onYear: progress.reached }), overLimits(designs));
  } finally {
    progress.stop();
  }
}

/** One design over the common years, in a JSON document. */
export interface CommonJson extends Omit<CommonFigures, 'name'> {
  weather: CommonAnswer['weather'];
  /** Whether no other design is better beyond chance. */
  isLeader: boolean;
  /** Names of those that are. */
  beatenBy: readonly string[];
}

/** What the common years say of one design, as JSON carries it beside the summary of the file's year. */
export function commonJson({ weather, leaders, beatenBy }: CommonAnswer, figures: CommonFigures): CommonJson {
  const { name, ...rest } = figures;
  return { weather, ...rest, isLeader: leaders.includes(name), beatenBy: beatenBy[name] ?? [] };
}

/** Names of the designs that exceed a calculated limit. */
function overLimits(designs: readonly NamedSite[]): string[] {
  const prepared = new PreparedCache();
  return designs.filter(({ site }) => exceededLimits(siteLimits(site, prepared)).length > 0).map(({ name }) => name);
}
