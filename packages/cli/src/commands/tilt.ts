import type { Command } from 'commander';
import type { TiltOptions } from '../answers/tilt.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

export function addTilt(program: Command): void {
  const command = program
    .command('tilt')
    .summary('the best tilts, with dates')
    .description('the range of best tilts of an array, and the best two by season with their dates')
    .argument('<site>', 'site file (YAML)')
    .option('--array <name>', 'which array (default: the first with a tilt to choose)')
    .option('--months <list>', 'dark months, as 11,12,1 (default: least sun for the load)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample: wintergap tilt examples/kettle-pond.yaml --months 11,12,1')
    .action(async (file: string, options: TiltOptions) => {
      const site = await openSite(file, options);
      const { answerTilt } = await import('../answers/tilt.js');
      return answerTilt(site, options);
    });
}
