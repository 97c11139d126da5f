import type { Command } from 'commander';

export function addStart(program: Command): void {
  program
    .command('start')
    .summary('a site file to edit')
    .description('a commented site file and demo weather to edit')
    .argument('<folder>', 'where to put them; made if it is not there')
    .addHelpText('after', '\nExample:\n  wintergap start my-place && wintergap year my-place/site.yaml')
    .action(async (folder: string) => (await import('../answers/start.js')).answerStart(folder));
}
