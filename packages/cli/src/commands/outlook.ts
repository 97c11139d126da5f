import { availableParallelism } from 'node:os';
import { outlookText } from '@wintergap/report';
import { designOf } from '@wintergap/site';
import { type Outlook, type OutlookWish, outlookOf, outlookWeather } from '@wintergap/study';
import type { Command } from 'commander';
import { InputError } from '../input-error.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';
import { wholeOption } from '../whole-option.js';

interface OutlookOptions extends AcceptWeather {
  years?: string;
  seed: string;
  spread?: string;
  workers?: string;
  variant?: string;
  json?: boolean;
  units?: string;
}

const help = `
Several real years (weather: { file: 2015.csv, otherYears: [2016.csv, 2017.csv] })
are run as they are, or resampled when --years is given. The same seed gives the
same years on any number of workers.

Example:
  wintergap outlook examples/kettle-pond.yaml --years 100`;

export function addOutlook(program: Command): void {
  program
    .command('outlook')
    .description('many weather years: usual, one-in-ten and worst year')
    .argument('<site>', 'site file (YAML)')
    .option('--years <n>', 'weather years to make (default: 100, or the real years of the site file)')
    .option('--seed <n>', 'fixes the made years', '1')
    .option('--spread <factor>', 'spread between years, in multiples of the measured one; 0 for none (default: 1)')
    .option('--workers <n>', 'years run at the same time (default: one for each processor)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', help)
    .action(async (file: string, options: OutlookOptions) => {
      const wish: OutlookWish = {
        ...(options.years !== undefined && { years: wholeOption('--years', options.years, 1, 10_000) }),
        seed: wholeOption('--seed', options.seed, 0, 2 ** 32),
        ...(options.spread !== undefined && { spread: spreadOption(options.spread) }),
      };
      const workers =
        options.workers === undefined ? availableParallelism() : wholeOption('--workers', options.workers, 1, 256);
      const site = designOf(loadAccepting(file, options), options.variant);
      const units = unitsOption(options.units, site.units);
      const trust = trustOf(site);
      const progress = countProgress('years');
      let outlook: Outlook;
      try {
        const task = { site, weather: outlookWeather(site, wish) };
        outlook = await outlookOf(task, { workers, onYear: progress.reached });
      } finally {
        progress.stop();
      }
      print(
        `${options.json ? JSON.stringify({ ...outlook, trust: trustJson(trust) }, null, 2) : withTrust(trust, outlookText(outlook, units))}\n`,
      );
    });
}

function spreadOption(text: string): number {
  const factor = Number(text);
  if (text.trim() !== '' && factor >= 0 && factor <= 3) return factor;
  throw new InputError(`--spread: expected a number from 0 to 3, got '${text}'`);
}
