import type { Command } from 'commander';
import type { LiveOptions } from '../answers/live.js';
import { addManualText } from '../manual/manual-text.js';
import { acceptWeather } from '../options/accept-weather.js';
import { yearsText } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

export function addLive(program: Command): void {
  const command = program
    .command('live')
    .summary('a page to drag the design on')
    .description('a page to drag the design on and see its year at once; for this machine only')
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'begin with a variant of the site file')
    .option('--html-live <file>', 'write the page as one file for a disk, serve nothing')
    .option(...acceptWeather)
    .option('--years <n>', "weather years; 1: the file's alone (default: 25 to 100)")
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', '\nExample: wintergap live examples/kettle-pond.yaml')
    .action(async (file: string, options: LiveOptions) => {
      const site = await openSite(file, options);
      const { answerLive } = await import('../answers/live.js');
      return answerLive(site, options);
    });
  addManualText(command, yearsText);
}
