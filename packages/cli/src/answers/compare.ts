import {
  type CostTerms,
  compareCsv,
  compareHtml,
  compareText,
  costText,
  type NamedYear,
  whyText,
} from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { inputFiles, type SiteFile } from '@wintergap/site';
import {
  beginYears,
  type ComparedCost,
  comparedCosts,
  designsOf,
  reasonRuns,
  rerunOf,
  type SnowRange,
  snowCovers,
  snowRange,
  type VariantReasons,
  variantReasons,
} from '@wintergap/study';
import { contractOf } from '@wintergap/tally';
import { PreparedCache } from '@wintergap/year';
import { commonJson, commonWish, commonYearsOf } from '../common-years.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { checkOutputs } from '../output/output-place.js';
import { print } from '../output/print.js';
import { countProgress } from '../output/progress.js';
import { writeWhole } from '../output/whole-file.js';
import { writtenFrom } from '../output/written-from.js';
import { runDesigns } from '../site/run-designs.js';

export interface CompareOptions extends CommonYearsOptions, AcceptWeather {
  why?: boolean;
  json?: boolean;
  html?: string;
  csv?: string;
  units?: string;
}

export async function answerCompare(site: SiteFile, options: CompareOptions): Promise<void> {
  const units = unitsOption(options.units, site.base.units);
  const costs = readCosts(site);
  checkOutputs({ '--html': options.html, '--csv': options.csv }, inputFiles(site));
  const prepared = new PreparedCache();
  const sites = designsOf(site);
  const begun = beginYears(sites, commonWish(options));
  const designs = runDesigns(site, prepared);
  const common = await commonYearsOf(designs, options, prepared, begun);
  const buildable = sites.filter(({ name }) => !common.leftOut.includes(name));
  const snow =
    buildable.length > 0 && snowCovers(designs.map(({ result }) => result))
      ? await snowRange(buildable, common.leaders, { ...commonWish(options), prepared })
      : null;
  const priced = costs && {
    designs: comparedCosts(designs, common, costs),
    terms: { years: costs.years, currency: site.base.costs?.currency },
  };
  if (options.html) {
    const page = { snow, costs: priced, written: writtenFrom(site) };
    writeWhole(options.html, await compareHtml(designs, common, units, page), inputFiles(site));
  }
  if (options.csv) writeWhole(options.csv, compareCsv(designs, common, units, priced), inputFiles(site));
  const reasons = options.why ? reasonsOf(designs, prepared) : null;
  if (options.json && reasons) print(`${JSON.stringify(reasons, null, 2)}\n`);
  else if (options.json) {
    const summaries = designs.map(({ name, result }, d) => [
      name,
      {
        ...contractOf(result.summary),
        common: { ...commonJson(common, common.designs[d]!), ...snowJson(snow, name) },
        ...(priced && { cost: costJson(priced.designs[d]!, priced.terms) }),
      },
    ]);
    print(`${JSON.stringify(Object.fromEntries(summaries), null, 2)}\n`);
  } else {
    print(`${compareText(designs, common, units, snow)}\n`);
    const text = priced ? costText(priced.designs, priced.terms, units) : '';
    if (text !== '') print(`\n${text}\n`);
    if (reasons) print(`\n${whyText(reasons, units)}\n`);
  }
}

/** Whether a design leads in the extremes of snow, and whatever the snow does. */
const snowJson = (snow: SnowRange | null, name: string) =>
  snow && {
    leadsWithoutSnow: snow.none.leaders.includes(name),
    leadsFullyCovered: snow.full.leaders.includes(name),
    leadsWhateverSnowDoes: snow.steady.includes(name),
  };

/** What a design costs, as JSON carries it; `null` for what hangs on a missing price. */
const costJson = ({ cost, againstBase }: ComparedCost, { years, currency }: CostTerms) => ({
  years,
  currency: currency ?? null,
  ...cost,
  againstBase,
});

function reasonsOf([base, ...variants]: readonly NamedYear[], prepared: PreparedCache): VariantReasons[] {
  if (!base) return [];
  const designs = [base, ...variants] as const;
  const progress = countProgress('years');
  const of = reasonRuns(designs);
  let done = 0;
  try {
    return variantReasons(
      designs,
      rerunOf(() => progress.reached(++done, of), prepared),
    );
  } finally {
    progress.stop();
  }
}
