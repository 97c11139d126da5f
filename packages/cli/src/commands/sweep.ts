import type { Command } from 'commander';
import type { SweepOptions } from '../answers/sweep.js';
import { addManualText } from '../manual/manual-text.js';
import { acceptWeather } from '../options/accept-weather.js';

const examples = `
The best are run through common weather years, and a tie is called one. Designs
over a calculated limit are in the file, but never among the best. A sweep that
was interrupted goes on where it stopped: give the same command again.

Examples:
  wintergap sweep site.yaml --out sweep.csv
  wintergap sweep site.yaml --part 3/16 --out part-3.csv
  wintergap sweep --join sweep.csv part-*.csv  # on many machines: man page`;

const manual = `Rows are of the file's year; --years adds means and standard errors.

Parts over several machines, with GNU parallel:
  seq 16 | parallel --sshlogin barn,attic --workdir ... --cleanup \\
    --transferfile site.yaml --transferfile weather.csv \\
    --return part-{}.csv \\
    wintergap sweep site.yaml --part {}/16 --out part-{}.csv`;

export function addSweep(program: Command): void {
  const command = program
    .command('sweep')
    .summary('many designs from ranges')
    .description('many designs from ranges in the site file; resumable; in parts for many machines')
    .argument('<files...>', 'the site file (YAML); with --join, the files of the parts')
    .option('--out <file>', 'write a row for each design: .csv or .ndjson, by its name')
    .option('--workers <n>', 'designs run at a time (default: one for each processor)')
    .option('--part <i/n>', 'run one part only, such as 3/16')
    .option('--join <file>', 'put parts together in this file instead')
    .option('--years <n>', 'add means and standard errors over so many weather years')
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--best <n>', 'how many of the best to print', '5')
    .option('--best-years <n>', "years to tell the best apart; 1: the file's", '25')
    .option(...acceptWeather)
    .option('--json', 'print one JSON document: how many designs, and the best')
    .option('--units <system>', 'metric or us, instead of what the site file says')
    .addHelpText('after', examples)
    .action(async (files: string[], options: SweepOptions) =>
      (await import('../answers/sweep.js')).answerSweep(files, options),
    );
  addManualText(command, manual);
}
