import type { Command } from 'commander';
import type { WeatherOptions } from '../answers/weather.js';

const examples = `
Several files, a folder, or a file of several years: one line a year.
Exit code 1 when a year is rejected.

Examples:
  wintergap weather data-demo/kettle-pond.csv
  wintergap weather measured.csv --mend --table mended.csv
  wintergap weather ridge-*.csv
  wintergap weather site.yaml --make --table made.csv`;

export function addWeather(program: Command): void {
  program
    .command('weather')
    .summary('what a weather file holds')
    .description('what a weather file holds and whether to trust it; convert it to the plain table')
    .argument('<files...>', 'EPW, TMY3, POWER or plain tables, or a site file')
    .option('--latitude <degrees>', 'of the site, or of a file that lacks it; north positive')
    .option('--longitude <degrees>', 'of the site, east positive')
    .option('--utc-offset <hours>', 'of local standard time, east positive')
    .option('--make', 'make a year from the monthly means in a site file')
    .option('--site', 'judge the weather of a site file, its clock mended')
    .option('--mend', 'fill gaps too long to bridge from the days around')
    .option('--table <file>', 'write the plain table (CSV); mended hours are marked')
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us', 'metric')
    .addHelpText('after', examples)
    .action(async (files: string[], options: WeatherOptions) =>
      (await import('../answers/weather.js')).answerWeather(files, options),
    );
}
