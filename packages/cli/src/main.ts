import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { addCarry } from './carry-command.js';
import { addCheck } from './check-command.js';
import { addCompare } from './compare-command.js';
import { exitCodes } from './exit-codes.js';
import { reportFailure } from './failure.js';
import { addOutlook } from './outlook-command.js';
import { addSize } from './size-command.js';
import { addStart } from './start-command.js';
import { addSweep } from './sweep-command.js';
import { addTilt } from './tilt-command.js';
import { addWeather } from './weather-command.js';
import { addWeigh } from './weigh-command.js';
import { addYear } from './year-command.js';

const program = new Command('wintergap')
  .description(
    'Simulates the 8760 hours of a year at a place beyond the power line: generator hours, throttling, bank and months.',
  )
  .version(JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version as string)
  .exitOverride()
  .showSuggestionAfterError()
  .configureHelp({ helpWidth: 80 });

for (const add of [
  addYear,
  addCompare,
  addSweep,
  addSize,
  addOutlook,
  addCarry,
  addWeigh,
  addTilt,
  addCheck,
  addWeather,
  addStart,
])
  add(program);

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
