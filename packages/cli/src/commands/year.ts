import type { Command } from 'commander';
import type { YearOptions } from '../answers/year.js';
import { acceptWeather } from '../options/accept-weather.js';
import { addCommonYearsOptions } from '../options/common-years-options.js';
import { expectOneYear } from '../options/one-year.js';
import { openSite } from '../site/open-site.js';

export function addYear(program: Command): void {
  const command = program
    .command('year')
    .summary('hours, fuel, bank, months')
    .description("this design's year: generator hours, fuel, throttling, bank, months")
    .argument('<site>', 'site file (YAML)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--csv <file>', 'write the ledger, 8760 rows')
    .option('--months-csv <file>', 'write the months for a spreadsheet, 12 rows')
    .option('--calendar <file>', 'write tilts, fuel, snow, equalising as a calendar (.ics)')
    .option('--html <file>', 'write the report, one page with charts')
    .option('--quiet', 'print the first sentences only')
    .option('--day <MM-DD>', 'print the 24 hours of one day')
    .option('--worst', 'print the dullest days, and what to leave off in them')
    .option('--days <n>', 'how many days --worst shows, 1 to 60 (default: 14)')
    .option('--losses', "print where each array's energy goes, plane to bus")
    .option('--age <years>', 'what the bank will do when it is so many years old')
    .option('--units <system>', 'metric or us, instead of what the site file says');
  addCommonYearsOptions(command)
    .addHelpText('after', '\nExample: wintergap year examples/kettle-pond.yaml --csv ledger.csv')
    .action(async (file: string, options: YearOptions) => {
      if (options.years === '1') expectOneYear();
      const site = await openSite(file, options);
      const { answerYear } = await import('../answers/year.js');
      return answerYear(site, options);
    });
}
