import { Command, CommanderError } from 'commander';
import { addCarry } from './commands/carry.js';
import { addCheck } from './commands/check.js';
import { addCompare } from './commands/compare.js';
import { addMount } from './commands/mount.js';
import { addOutlook } from './commands/outlook.js';
import { addSize } from './commands/size.js';
import { addStart } from './commands/start.js';
import { addSweep } from './commands/sweep.js';
import { addTilt } from './commands/tilt.js';
import { addWeather } from './commands/weather.js';
import { addWeigh } from './commands/weigh.js';
import { addYear } from './commands/year.js';
import { exitCodes } from './exit-codes.js';
import { reportFailure } from './failure.js';
import { print, printError } from './print.js';
import { version } from './version.js';

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
  .version(version())
  .exitOverride()
  .configureOutput({ writeOut: print, writeErr: printError })
  .showSuggestionAfterError()
  .configureHelp({ helpWidth: 80 });

// In the order of the help page. What a command does is loaded when it runs: help, and what is wrong on the command line,
// are told without any of it.
addYear(program);
addCompare(program);
addSweep(program);
addSize(program);
addOutlook(program);
addCarry(program);
addWeigh(program);
addMount(program);
addTilt(program);
addCheck(program);
addWeather(program);
addStart(program);

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
