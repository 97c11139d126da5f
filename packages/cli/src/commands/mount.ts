import { OutOfRangeError } from '@wintergap/ground';
import { mountText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { designOf } from '@wintergap/site';
import { type MountStudy, mountStudy } from '@wintergap/study';
import type { Command } from 'commander';
import { addCommonYearsOptions, type CommonYearsOptions, commonWish } from '../common-years.js';
import { InputError } from '../input-error.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';

interface MountOptions extends AcceptWeather, CommonYearsOptions {
  array?: string;
  variant?: string;
  json?: boolean;
}

export function addMount(program: Command): void {
  const command = program
    .command('mount')
    .description('fixed, vertical, seasonal, pole or axes: hours, light, snow, money, and the one to choose')
    .argument('<site>', 'site file (YAML)')
    .option('--array <name>', 'which array; the first that stands unless given')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample:\n  wintergap mount examples/kettle-pond.yaml')
    .action(async (file: string, options: MountOptions) => {
      const site = loadAccepting(file, options);
      const design = designOf(site, options.variant);
      const costs = readCosts(site);
      const trust = trustOf(design);
      const wish = commonWish(options);
      const progress = countProgress('years');
      let study: MountStudy;
      try {
        study = await mountStudy(design, options.array, costs, { ...wish, onYear: progress.reached });
      } catch (error) {
        if (!(error instanceof OutOfRangeError)) throw error;
        throw new InputError(`--array${options.array ? ` ${options.array}` : ''}: ${error.message}`);
      } finally {
        progress.stop();
      }
      if (options.json) {
        const document = { weather: trustJson(trust), ...study };
        print(`${JSON.stringify(document, null, 2)}\n`);
      } else print(`${withTrust(trust, mountText(study))}\n`);
    });
}
