import { OutOfRangeError } from '@wintergap/ground';
import { tiltText } from '@wintergap/report';
import { designOf } from '@wintergap/site';
import { type BestTilts, bestTilts } from '@wintergap/study';
import type { Command } from 'commander';
import { addCommonYearsOptions, type CommonYearsOptions, commonWish } from '../common-years.js';
import { InputError } from '../input-error.js';
import { print } from '../print.js';
import { countProgress } from '../progress.js';
import { unitsOption } from '../units-option.js';
import { type AcceptWeather, acceptWeather, loadAccepting, trustJson, trustOf, withTrust } from '../weather-trust.js';

interface TiltOptions extends AcceptWeather, CommonYearsOptions {
  array?: string;
  months?: string;
  variant?: string;
  json?: boolean;
  units?: string;
}

export function addTilt(program: Command): void {
  const command = program
    .command('tilt')
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
      const design = designOf(loadAccepting(file, options), options.variant);
      const units = unitsOption(options.units, design.units);
      const months = monthsOption(options.months);
      const trust = trustOf(design);
      const progress = countProgress('years');
      let tilts: BestTilts;
      try {
        const wish = { ...commonWish(options), onYear: progress.reached };
        tilts = await asInputError(options.array, () => bestTilts(design, options.array, months, wish));
      } finally {
        progress.stop();
      }
      print(
        `${options.json ? JSON.stringify({ ...tilts, trust: trustJson(trust) }, null, 2) : withTrust(trust, tiltText(tilts, units))}\n`,
      );
    });
}

function monthsOption(list: string | undefined): number[] | undefined {
  if (list === undefined) return undefined;
  const months = [...new Set(list.split(',').map((month) => Number(month.trim() || Number.NaN)))];
  if (months.every((month) => Number.isInteger(month) && month >= 1 && month <= 12)) return months;
  throw new InputError(`--months ${list}: expected months from 1 to 12 with commas between, such as 11,12,1`);
}

/** An array that is not there, or has no tilt, is wrong use of the program. */
async function asInputError<Result>(array: string | undefined, make: () => Promise<Result>): Promise<Result> {
  try {
    return await make();
  } catch (error) {
    if (error instanceof OutOfRangeError) throw new InputError(`--array${array ? ` ${array}` : ''}: ${error.message}`);
    throw error;
  }
}
