import { weighText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { designOf } from '@wintergap/site';
import { type SiteWeights, weighSite } from '@wintergap/study';
import type { Command } from 'commander';
import { addCommonYearsOptions, type CommonYearsOptions, commonWish } from '../common-years.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';

interface WeighOptions extends CommonYearsOptions, AcceptWeather {
  variant?: string;
  json?: boolean;
  units?: string;
}

export function addWeigh(program: Command): void {
  const command = program
    .command('weigh')
    .description('what each load, effect, charger size and cabinet weighs in engine hours and fuel')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample:\n  wintergap weigh examples/kettle-pond.yaml')
    .action(async (file: string, options: WeighOptions) => {
      const site = loadAccepting(file, options);
      const design = designOf(site, options.variant);
      const bankPerKWh = readCosts(site)?.bankPerKWh ?? null;
      const units = unitsOption(options.units, design.units);
      const trust = trustOf(design);
      const progress = countProgress('years');
      let weights: SiteWeights;
      try {
        weights = await weighSite(design, { ...commonWish(options), onYear: progress.reached }, bankPerKWh);
      } finally {
        progress.stop();
      }
      print(
        `${options.json ? JSON.stringify({ ...weights, trust: trustJson(trust) }, null, 2) : withTrust(trust, weighText(weights, units))}\n`,
      );
    });
}
