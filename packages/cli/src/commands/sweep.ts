import { availableParallelism } from 'node:os';
import { type SweepPage, sweepText } from '@wintergap/report';
import {
  BestDesigns,
  type CommonAnswer,
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
import type { Command } from 'commander';
import { type CommonYearsOptions, commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import { InputError } from '../input-error.js';
import { print, printError } from '../print.js';
import { countProgress, sweepProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, withTrust } from '../weather-trust.js';
import { wholeOption } from '../whole-option.js';

interface SweepOptions extends AcceptWeather, Pick<CommonYearsOptions, 'years' | 'seed'> {
  bestYears: string;
  out?: string;
  workers?: string;
  part?: string;
  join?: string;
  best: string;
  json?: boolean;
  units?: string;
}

const examples = `
Rows are of the file's year; --years adds means and standard errors. The best
are run through common weather years, and a tie is called one. Designs over a
calculated limit are in the file, but never among the best.

An interrupted sweep goes on where it stopped: give the same command again.

Examples:
  wintergap sweep site.yaml --out sweep.csv
  wintergap sweep site.yaml --part 3/16 --out part-3.csv
  wintergap sweep --join sweep.csv part-*.csv

Parts over several machines, with GNU parallel:
  seq 16 | parallel --sshlogin barn,attic --workdir ... --cleanup \\
    --transferfile site.yaml --transferfile weather.csv \\
    --return part-{}.csv \\
    wintergap sweep site.yaml --part {}/16 --out part-{}.csv`;

export function addSweep(program: Command): void {
  program
    .command('sweep')
    .description('many designs from the ranges in the site file; resumable; in parts for many machines')
    .argument('<files...>', 'the site file (YAML); with --join, the files of the parts')
    .option('--out <file>', 'write a row for each design: .csv or .ndjson, by its name')
    .option('--workers <n>', 'designs run at the same time (default: one for each processor)')
    .option('--part <i/n>', 'run one part only, such as 3/16')
    .option('--join <file>', 'put parts together in this file instead')
    .option('--years <n>', 'add to each row means and standard errors over so many weather years')
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--best <n>', 'how many of the best to print', '5')
    .option('--best-years <n>', 'weather years that tell the best apart; 1 for the year of the file alone', '25')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document: how many designs, and the best')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', examples)
    .action(async (files: string[], options: SweepOptions) => {
      try {
        await (options.join === undefined ? sweep(files, options) : join(options.join, files, options));
      } catch (error) {
        throw error instanceof SweepFileError ? new InputError(error.message) : error;
      }
    });
}

async function sweep(files: readonly string[], options: SweepOptions): Promise<void> {
  const [file] = files;
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
  const ownYear = simulateSite(site.base);
  const base = sweepResults(ownYear);
  await runPlan(plan, options.out, workers, (row) => best.add(row));
  const summary = best.summary();
  const common = await bestOverYears(plan, summary, { years: bestYears, seed, workers });
  const page = { site: site.base.name, axes: plan.axes.map(({ path }) => path), summary, base, common };
  printPage(page, options, site.base.units, ownYear.weather.judgement);
}

/** The best designs over common years; `null` where the file's year alone is asked for. */
async function bestOverYears(
  { site, axes }: SweepPlan,
  summary: SweepSummary,
  wish: { years: number; seed: number; workers: number },
): Promise<CommonAnswer | null> {
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
  printPage({ site, axes, summary: best.summary(), base: null, common: null }, options, 'metric');
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
