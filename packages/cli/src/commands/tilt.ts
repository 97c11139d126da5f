import type { Command } from 'commander';
import { acceptWeather } from '../accept-weather.js';
import type { TiltOptions } from '../answers/tilt.js';
import { addCommonYearsOptions } from '../common-years-options.js';
import { openSite } from '../open-site.js';

export function addTilt(program: Command): void {
  const command = program
    .command('tilt')
    .summary('the best tilts, with dates')
    .description('the range of best tilts of an array, and the best two by season with their dates')
    .argument('<site>', 'site file (YAML)')
    .option('--array <name>', 'which array; the first with a tilt to choose unless given')
    .option('--months <list>', 'the dark months, such as 11,12,1; those with the least sun for the load unless given')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample:\n  wintergap tilt examples/kettle-pond.yaml --months 11,12,1')
    .action(async (file: string, options: TiltOptions) => {
      const site = await openSite(file, options);
      const { answerTilt } = await import('../answers/tilt.js');
      return answerTilt(site, options);
    });
}
