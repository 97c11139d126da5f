import type { Command } from 'commander';
import type { SizeOptions } from '../answers/size.js';
import { acceptWeather } from '../options/accept-weather.js';
import { openSite } from '../site/open-site.js';

const help = `
The site file says what may be chosen, what must be met and what is to be least:
  size:
    choose: { arrays.0.strings: 2..8, bank.capacity: [500 Ah, 800 Ah, 1200 Ah] }
    target: { generatorHours: 60 h, fuel: 100 L, darkHours: 0 h,
              autonomy: 3 days, in: usual }      # or one-in-ten: the bad year
    least: array                  # or bank, cost (needs costs:), generatorHours
    years: 25                     # the same for each design; also seed: 1

Every design meets the same weather years (25 made ones, 40 for one-in-ten, or
the site's real ones); usual is their median. A smaller design that misses the
target by less than the standard error of these years is taken, and named so.
Designs over a calculated limit are left out. Exit code 1 when none meets it.

Example: wintergap size site.yaml`;

export function addSize(program: Command): void {
  program
    .command('size')
    .summary('least that meets a target')
    .description('the smallest or cheapest design that meets a target, beside the hand method')
    .argument('<site>', 'site file (YAML)')
    .option(...acceptWeather)
    .option('--years <n>', "weather years; 1: the file's alone (default: 25, or 40)")
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', help)
    .action(async (file: string, options: SizeOptions) => {
      const site = await openSite(file, options);
      const { answerSize } = await import('../answers/size.js');
      return answerSize(site, options);
    });
}
