import { carryText, commonRivalsText } from '@wintergap/report';
import { carrySummary, studyCarry } from '@wintergap/seasonal';
import { designOf, type SiteFile } from '@wintergap/site';
import { commonRivals } from '@wintergap/study';
import { PreparedCache } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { standingJson, standingOf, withStanding } from '../output/standing.js';

export interface CarryOptions extends AcceptWeather, CommonYearsOptions {
  variant?: string;
  json?: boolean;
  units?: string;
}

export async function answerCarry(site: SiteFile, options: CarryOptions): Promise<void> {
  const units = unitsOption(options.units, site.base.units);
  const prepared = new PreparedCache();
  const design = designOf(site, options.variant);
  const standing = standingOf(design, prepared);
  const progress = countProgress('years at most');
  try {
    const study = studyCarry(site, options.variant, progress.reached, prepared);
    const rivals = await commonRivals(study, { ...commonWish(options), prepared });
    const page = [carryText(study, units), rivals ? commonRivalsText(rivals) : ''].filter((part) => part !== '');
    const summary = carrySummary(study);
    const { cautions, trust } = standingJson(standing);
    const document = {
      ...summary,
      cautions: [...cautions, ...summary.cautions],
      commonRivals: rivals?.common ?? null,
      trust,
    };
    const answer = options.json ? JSON.stringify(document, null, 2) : withStanding(standing, units, page.join('\n\n'));
    progress.stop();
    print(`${answer}\n`);
    if (!study.judged.judgement.size.closes && !study.closing?.closes) process.exitCode = exitCodes.no;
  } finally {
    progress.stop();
  }
}
