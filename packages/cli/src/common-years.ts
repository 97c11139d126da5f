import type { NamedYear } from '@wintergap/report';
import {
  type BegunYears,
  type CommonAnswer,
  type CommonFigures,
  type CommonWish,
  commonAnswer,
  fileYear,
  runUntilClear,
} from '@wintergap/study';
import { exceededLimits, type PreparedCache } from '@wintergap/year';
import type { CommonYearsOptions } from './options/common-years-options.js';
import { wholeOption } from './options/whole-option.js';
import { countProgress } from './output/progress.js';

/** The options as the study takes them. */
export function commonWish({ years, seed, workers }: CommonYearsOptions): CommonWish {
  return {
    ...(years !== undefined && { years: wholeOption('--years', years, 1, 10_000) }),
    ...(seed !== undefined && { seed: wholeOption('--seed', seed, 0, 2 ** 32) }),
    ...(workers !== undefined && { workers: wholeOption('--workers', workers, 1, 256) }),
  };
}

/**
 * Runs designs over common years, with a bar on stderr while it lasts.
 *
 * @param designs with the year of the file, which is not run again; the first is the base
 * @param prepared what those years were prepared with
 * @param begun the same designs' years, where other threads run them already
 */
export async function commonYearsOf(
  designs: readonly NamedYear[],
  options: CommonYearsOptions,
  prepared: PreparedCache,
  begun: BegunYears | null = null,
): Promise<CommonAnswer> {
  const wish = commonWish(options);
  const leftOut = overLimits(designs);
  if (wish.years === 1) return commonAnswer(fileYear(designs), leftOut);
  const progress = countProgress('years');
  try {
    const sites = designs.map(({ name, result }) => ({ name, site: result.site }));
    const run = await runUntilClear(sites, { ...wish, prepared, begun, onYear: progress.reached }, leftOut);
    return commonAnswer(run, leftOut);
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
function overLimits(designs: readonly NamedYear[]): string[] {
  return designs.filter(({ result }) => exceededLimits(result.limits).length > 0).map(({ name }) => name);
}
