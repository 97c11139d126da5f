import type { Command } from 'commander';
import { type AcceptWeather, acceptWeather } from '../options/accept-weather.js';
import { openSite } from '../site/open-site.js';

export function addCheck(program: Command): void {
  program
    .command('check')
    .summary('electrical limits and files')
    .description('file, data and electrical limits of a site and its variants')
    .argument('<site>', 'site file (YAML)')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText(
      'after',
      '\nExit code 1 when a calculated limit is exceeded.\nExample: wintergap check examples/kettle-pond.yaml',
    )
    .action(async (file: string, options: AcceptWeather & { json?: boolean; units?: string }) => {
      const site = await openSite(file, options);
      const { answerCheck } = await import('../answers/check.js');
      return answerCheck(site, options);
    });
}
