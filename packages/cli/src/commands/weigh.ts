import type { Command } from 'commander';
import type { WeighOptions } from '../answers/weigh.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

export function addWeigh(program: Command): void {
  const command = program
    .command('weigh')
    .summary('what each load weighs')
    .description('what each load, effect, charger size and cabinet weighs in engine hours and fuel')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample: wintergap weigh examples/kettle-pond.yaml')
    .action(async (file: string, options: WeighOptions) => {
      const site = await openSite(file, options);
      const { answerWeigh } = await import('../answers/weigh.js');
      return answerWeigh(site, options);
    });
}
