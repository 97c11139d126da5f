import type { Command } from 'commander';
import type { CompareOptions } from '../answers/compare.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { openSite } from '../site/open-site.js';

export function addCompare(program: Command): void {
  const command = program
    .command('compare')
    .summary('the variants side by side')
    .description('variants of the site over the same weather years, differences with certainty')
    .argument('<site>', 'site file (YAML)')
    .option('--why', 'say why, effect by effect (with --json: the reasons alone)')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document: summaries and common years')
    .option('--csv <file>', 'write the designs for a spreadsheet, one row each')
    .option('--html <file>', 'write the report, one page with charts')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample: wintergap compare examples/kettle-pond.yaml')
    .action(async (file: string, options: CompareOptions) => {
      const site = await openSite(file, options);
      const { answerCompare } = await import('../answers/compare.js');
      return answerCompare(site, options);
    });
}
