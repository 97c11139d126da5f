import type { Command } from 'commander';

/** What the user says of the weather years under an answer. */
export interface CommonYearsOptions {
  years?: string;
  seed?: string;
  workers?: string;
}

/** The options of every command whose answer rests on common weather years. */
export function addCommonYearsOptions(command: Command): Command {
  return command
    .option(
      '--years <n>',
      'weather years under the answer; 1 for the year of the file alone (default: 25, and up to 100 where these leave the best in doubt)',
    )
    .option('--seed <n>', 'fixes the made years (default: 1)')
    .option('--workers <n>', 'years run at the same time (default: one for each processor)');
}
