import type { Command } from 'commander';
import { addManualText } from '../manual/manual-text.js';

/** What the user says of the weather years under an answer. */
export interface CommonYearsOptions {
  years?: string;
  seed?: string;
  workers?: string;
}

/** What a line of help has no room for. */
export const yearsText = `The answer rests on 25 weather years, and on up to 100 where these leave the best in doubt;
with --years on as many as are asked for, with --years 1 on the year of the file alone.`;

/** The options of every command whose answer rests on common weather years. */
export function addCommonYearsOptions(command: Command): Command {
  command
    .option('--years <n>', "weather years; 1: the file's alone (default: 25 to 100)")
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--workers <n>', 'years run at a time (default: one for each processor)');
  return addManualText(command, yearsText);
}
