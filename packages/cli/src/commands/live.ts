import type { Command } from 'commander';
import { acceptWeather } from '../accept-weather.js';
import type { LiveOptions } from '../answers/live.js';
import { openSite } from '../open-site.js';

export function addLive(program: Command): void {
  program
    .command('live')
    .summary('a page to drag the design on')
    .description('a page on which the design is dragged and its year is seen at once; for this machine only')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'begin with a variant of the site file instead of its base design')
    .option('--html-live <file>', 'write the page as one file that works from a disk, and serve nothing')
    .option(...acceptWeather)
    .option(
      '--years <n>',
      'weather years under the answer; 1 for the year of the file alone (default: 25, and up to 100 where these leave the best in doubt)',
    )
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', '\nExample:\n  wintergap live examples/kettle-pond.yaml')
    .action(async (file: string, options: LiveOptions) => {
      const site = await openSite(file, options);
      const { answerLive } = await import('../answers/live.js');
      return answerLive(site, options);
    });
}
