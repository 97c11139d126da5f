import { sizeText } from '@wintergap/report';
import { readSize, type SizeAnswer, sizeDesign } from '@wintergap/study';
import { contractOf } from '@wintergap/tally';
import type { WeatherJudgement } from '@wintergap/weather';
import { PreparedCache } from '@wintergap/year';
import type { Command } from 'commander';
import { type CommonYearsOptions, commonWish } from '../common-years.js';
import { exitCodes } from '../exit-codes.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';

interface SizeOptions extends AcceptWeather, Pick<CommonYearsOptions, 'years' | 'seed'> {
  json?: boolean;
  units?: string;
}

const help = `
The site file says what may be chosen, what must be met and what is to be least:
  size:
    choose: { arrays.0.strings: 2..8, bank.capacity: [500 Ah, 800 Ah, 1200 Ah] }
    target: { generatorHours: 60 h, fuel: 100 L, darkHours: 0 h, autonomy: 3 days,
              in: usual }         # or one-in-ten: the bad year
    least: array                  # or bank, cost (needs costs:), generatorHours
    years: 25                     # weather years, the same for each design; seed: 1

Every design meets the same weather years (25 made ones, 40 for one-in-ten, or
the site's real ones); usual is their median. A smaller design that misses the
target by less than the standard error of these years is taken, and named so.
Designs over a calculated limit are left out.

Exit code 1 when no design meets the target.

Example:
  wintergap size site.yaml`;

export function addSize(program: Command): void {
  program
    .command('size')
    .description('the smallest or cheapest design that meets a target, beside the hand method')
    .argument('<site>', 'site file (YAML)')
    .option(...acceptWeather)
    .option('--years <n>', 'weather years under the answer; 1 for the year of the file alone')
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', help)
    .action((file: string, options: SizeOptions) => {
      const site = loadAccepting(file, options);
      const question = readSize(site, commonWish(options));
      const units = unitsOption(options.units, site.base.units);
      const trust = trustOf(site.base);
      const progress = countProgress('designs at most');
      let answer: SizeAnswer;
      try {
        answer = sizeDesign(site, question, new PreparedCache(), progress.reached);
      } finally {
        progress.stop();
      }
      print(`${options.json ? sizeJson(answer, trust) : withTrust(trust, sizeText(answer, units))}\n`);
      if (!answer.met) process.exitCode = exitCodes.no;
    });
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
