import type { Command } from 'commander';
import type { MountOptions } from '../answers/mount.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

export function addMount(program: Command): void {
  const command = program
    .command('mount')
    .summary('fixed, pole or axes')
    .description('fixed, vertical, seasonal, pole, axes: hours, light, snow, money, the choice')
    .argument('<site>', 'site file (YAML)')
    .option('--array <name>', 'which array (default: the first that stands)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample: wintergap mount examples/kettle-pond.yaml')
    .action(async (file: string, options: MountOptions) => {
      const site = await openSite(file, options);
      const { answerMount } = await import('../answers/mount.js');
      return answerMount(site, options);
    });
}
