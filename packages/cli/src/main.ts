import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { exitCodes } from './exit-codes.js';
import { reportFailure } from './failure.js';
import { print, printError } from './print.js';

/** The commands in the order of the help page. Each is loaded when it is asked for: most need but a part of the code. */
const commands: Record<string, () => Promise<(program: Command) => void>> = {
  year: async () => (await import('./commands/year.js')).addYear,
  compare: async () => (await import('./commands/compare.js')).addCompare,
  sweep: async () => (await import('./commands/sweep.js')).addSweep,
  size: async () => (await import('./commands/size.js')).addSize,
  outlook: async () => (await import('./commands/outlook.js')).addOutlook,
  carry: async () => (await import('./commands/carry.js')).addCarry,
  weigh: async () => (await import('./commands/weigh.js')).addWeigh,
  mount: async () => (await import('./commands/mount.js')).addMount,
  tilt: async () => (await import('./commands/tilt.js')).addTilt,
  check: async () => (await import('./commands/check.js')).addCheck,
  weather: async () => (await import('./commands/weather.js')).addWeather,
  start: async () => (await import('./commands/start.js')).addStart,
};

// Whoever reads the output may stop reading, as `head` does: that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitCodes.done);
  printError(`the results cannot be written to the standard output: ${error.message}\n`);
  process.exit(exitCodes.fault);
});

const program = new Command('wintergap')
  .description(
    'Simulates the 8760 hours of a year at a place beyond the power line: generator hours, throttling, bank and months.',
  )
  .version(JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version as string)
  .exitOverride()
  .configureOutput({ writeOut: print, writeErr: printError })
  .showSuggestionAfterError()
  .configureHelp({ helpWidth: 80 });

const asked = process.argv[2] ?? '';
// For the help page, and to suggest what a misspelled command meant, all are needed.
const wanted = Object.hasOwn(commands, asked) ? [asked] : Object.keys(commands);
for (const name of wanted) (await commands[name]!())(program);

try {
  await program.parseAsync();
} catch (error) {
  // Help and version end the program through commander as well, with exit code 0.
  process.exitCode =
    error instanceof CommanderError
      ? error.exitCode === 0
        ? exitCodes.done
        : exitCodes.wrongInput
      : reportFailure(error);
}
