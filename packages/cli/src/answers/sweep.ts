import { availableParallelism } from 'node:os';
import { type SweepPage, sweepText } from '@wintergap/report';
import type { SiteFile } from '@wintergap/site';
import {
  BestDesigns,
  type CommonBest,
  commonBest,
  joinSweep,
  openSweepFile,
  planSweep,
  runSweep,
  SweepFileError,
  type SweepPart,
  type SweepPlan,
  type SweepRow,
  type SweepSummary,
  sweepResults,
  wholeSweep,
} from '@wintergap/study';
import type { WeatherJudgement } from '@wintergap/weather';
import { simulateSite } from '@wintergap/year';
import { commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import { InputError } from '../input-error.js';
import type { AcceptWeather } from '../options/accept-weather.js';
import type { CommonYearsOptions } from '../options/common-years-options.js';
import { unitsOption } from '../options/units-option.js';
import { wholeOption } from '../options/whole-option.js';
import { print, printError } from '../output/print.js';
import { countProgress, sweepProgress } from '../output/progress.js';
import { trustJson, withTrust } from '../output/weather-trust.js';
import { loadAccepting } from '../site/load-accepting.js';

export interface SweepOptions extends AcceptWeather, Pick<CommonYearsOptions, 'years' | 'seed'> {
  bestYears: string;
  out?: string;
  workers?: string;
  part?: string;
  join?: string;
  best: string;
  json?: boolean;
  units?: string;
}

export async function answerSweep(files: string[], options: SweepOptions): Promise<void> {
  try {
    await (options.join === undefined ? sweep(files, options) : join(options.join, files, options));
  } catch (error) {
    throw error instanceof SweepFileError ? new InputError(error.message) : error;
  }
}

async function sweep(files: readonly string[], options: SweepOptions): Promise<void> {
  const [file] = files;
  // Told before anything is run, and not after a thousand designs.
  unitsOption(options.units, 'metric');
  if (file === undefined || files.length > 1) {
    throw new InputError(`sweep ${files.join(' ')}: expected one site file; to put parts together add --join FILE`);
  }
  const workers =
    options.workers === undefined ? availableParallelism() : wholeOption('--workers', options.workers, 1, 1024);
  const best = new BestDesigns(wholeOption('--best', options.best, 1, 1000));
  const bestYears = wholeOption('--best-years', options.bestYears, 1, 1000);
  const site = loadAccepting(file, options);
  const { years, seed = 1 } = commonWish({
    ...(options.years !== undefined && { years: options.years }),
    ...(options.seed !== undefined && { seed: options.seed }),
  });
  const plan = planSweep(site, partOption(options.part), years === undefined ? null : { count: years, seed });
  // The base design first: weather that cannot be used is told here, and not in every row.
  const { base, judgement } = ownYear(site);
  await runPlan(plan, options.out, workers, (row) => best.add(row));
  const summary = best.summary();
  const common = await bestOverYears(plan, summary, { years: bestYears, seed, workers });
  const page = {
    site: site.base.name,
    axes: plan.axes.map(({ path }) => path),
    summary,
    base,
    common,
    unpriced: plan.unpriced,
    unpricedApart: plan.unpricedApart,
    currency: site.base.costs?.currency ?? null,
  };
  printPage(page, options, site.base.units, judgement);
}

/** What is told of the site's own year: the year itself would stand in memory for as long as the sweep runs. */
function ownYear(site: SiteFile) {
  const year = simulateSite(site.base);
  return { base: sweepResults(year), judgement: year.weather.judgement };
}

/** The best designs over common years; `null` where the file's year alone is asked for. */
async function bestOverYears(
  { site, axes }: SweepPlan,
  summary: SweepSummary,
  wish: { years: number; seed: number; workers: number },
): Promise<CommonBest | null> {
  if (wish.years === 1) return null;
  const progress = countProgress('years of the best');
  try {
    return await commonBest(site, axes, summary, { ...wish, onYear: progress.reached });
  } finally {
    progress.stop();
  }
}

async function runPlan(
  plan: SweepPlan,
  out: string | undefined,
  workers: number,
  take: (row: SweepRow) => void,
): Promise<void> {
  const { from, to } = plan.positions;
  const file = out === undefined ? null : await openSweepFile(out, plan, take);
  const done = file?.done ?? 0;
  if (done > 0) printError(`${out}: ${done} of ${to - from} designs are there already\n`);
  if (done === to - from) {
    file?.close();
    return;
  }
  const progress = sweepProgress(to - from, done);
  try {
    await runSweep(plan, from + done, workers, (rows) => {
      file?.append(rows);
      for (const row of rows) take(row);
      progress.add(rows.length);
    });
  } finally {
    progress.stop();
    file?.close();
  }
}

async function join(out: string, parts: readonly string[], options: SweepOptions): Promise<void> {
  for (const [name, value] of Object.entries({
    '--out': options.out,
    '--part': options.part,
    '--years': options.years,
  })) {
    if (value !== undefined) throw new InputError(`${name} ${value}: does not go with --join`);
  }
  const best = new BestDesigns(wholeOption('--best', options.best, 1, 1000));
  const { site, axes } = await joinSweep(out, parts, (row) => best.add(row));
  printError(`${out}: joined from ${parts.length} files\n`);
  printPage(
    { site, axes, summary: best.summary(), base: null, common: null, unpriced: [], unpricedApart: [], currency: null },
    options,
    'metric',
  );
}

function printPage(page: SweepPage, options: SweepOptions, ofSite: 'metric' | 'us', trust?: WeatherJudgement): void {
  const units = unitsOption(options.units, ofSite);
  const json = () => JSON.stringify({ ...page, ...(trust && { trust: trustJson(trust) }) }, null, 2);
  print(`${options.json ? json() : withTrust(trust, sweepText(page, units))}\n`);
  const { designs, failed } = page.summary;
  if (designs > 0 && failed === designs) process.exitCode = exitCodes.no;
}

function partOption(text: string | undefined): SweepPart {
  if (text === undefined) return wholeSweep;
  const [, index, of] = /^(\d{1,9})\/(\d{1,9})$/.exec(text)?.map(Number) ?? [];
  if (index === undefined || of === undefined || index < 1 || index > of) {
    throw new InputError(`--part ${text}: expected a part and how many there are, such as 1/16 to 16/16`);
  }
  return { index, of };
}
