import type { Command } from 'commander';
import type { OutlookOptions } from '../answers/outlook.js';
import { acceptWeather } from '../options/accept-weather.js';

const help = `
Real years (weather: { file: 2015.csv, otherYears: [2016.csv, 2017.csv] }) are
run as they are, or resampled when --years is given. The same seed gives the
same years on any number of workers.

Example: wintergap outlook examples/kettle-pond.yaml --years 100`;

export function addOutlook(program: Command): void {
  program
    .command('outlook')
    .summary('usual and one-in-ten year')
    .description('many weather years: usual, one-in-ten and worst year')
    .argument('<site>', 'site file (YAML)')
    .option('--years <n>', 'weather years to make (default: 100, or the real ones)')
    .option('--seed <n>', 'fixes the made years', '1')
    .option('--spread <factor>', 'times the measured spread of years; 0: none (default: 1)')
    .option('--workers <n>', 'years run at a time (default: one for each processor)')
    .option('--variant <name>', 'a variant of the site file instead of its base design')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', help)
    .action(async (file: string, options: OutlookOptions) =>
      (await import('../answers/outlook.js')).answerOutlook(file, options),
    );
}
