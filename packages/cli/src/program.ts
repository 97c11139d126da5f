import { Command } from 'commander';
import { addCarry } from './commands/carry.js';
import { addCheck } from './commands/check.js';
import { addCompare } from './commands/compare.js';
import { addCompletion } from './commands/completion.js';
import { addLive } from './commands/live.js';
import { addMount } from './commands/mount.js';
import { addOutlook } from './commands/outlook.js';
import { addSize } from './commands/size.js';
import { addStart } from './commands/start.js';
import { addSweep } from './commands/sweep.js';
import { addTilt } from './commands/tilt.js';
import { addWeather } from './commands/weather.js';
import { addWeigh } from './commands/weigh.js';
import { addYear } from './commands/year.js';
import { helpPage } from './manual/help-page.js';
import { print, printError } from './output/print.js';
import { version } from './version.js';

/**
 * The program with all its commands, in the order of the help page. What a command does is loaded when it runs: help, and
 * what is wrong on the command line, are told without any of it.
 */
export function createProgram(): Command {
  const program = new Command('wintergap')
    .description(
      'Simulates the 8760 hours of a year at a place beyond the power line: generator hours, throttling, bank and months.',
    )
    .version(version())
    .exitOverride()
    .configureOutput({ writeOut: print, writeErr: printError })
    .showSuggestionAfterError()
    .configureHelp({ helpWidth: 80, formatHelp: helpPage });
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
  addLive(program);
  addStart(program);
  addCompletion(program);
  return program;
}
