import { sizeText } from '@wintergap/report';
import type { SiteFile } from '@wintergap/site';
import { readSize, type SizeAnswer, sizeDesign } from '@wintergap/study';
import { contractOf } from '@wintergap/tally';
import type { WeatherJudgement } from '@wintergap/weather';
import { PreparedCache } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { trustJson, trustOf, withTrust } from '../output/weather-trust.js';

export interface SizeOptions extends AcceptWeather, Pick<CommonYearsOptions, 'years' | 'seed'> {
  json?: boolean;
  units?: string;
}

export function answerSize(site: SiteFile, options: SizeOptions): void {
  const question = readSize(site, commonWish(options));
  const units = unitsOption(options.units, site.base.units);
  const prepared = new PreparedCache();
  const trust = trustOf(site.base, prepared);
  const progress = countProgress('designs at most');
  let answer: SizeAnswer;
  try {
    answer = sizeDesign(site, question, prepared, progress.reached);
  } finally {
    progress.stop();
  }
  print(`${options.json ? sizeJson(answer, trust) : withTrust(trust, sizeText(answer, units))}\n`);
  if (!answer.met) process.exitCode = exitCodes.no;
}

/** The answer with its year as a summary only. */
function sizeJson({ year, question, ...answer }: SizeAnswer, trust: WeatherJudgement): string {
  const { axes, ...asked } = question;
  const choose = Object.fromEntries(axes.map(({ path, values }) => [path, values]));
  return JSON.stringify(
    { ...answer, question: { choose, ...asked }, summary: contractOf(year.summary), trust: trustJson(trust) },
    null,
    2,
  );
}
