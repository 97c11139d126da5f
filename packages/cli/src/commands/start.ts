import type { Command } from 'commander';

export function addStart(program: Command): void {
  program
    .command('start')
    .summary('a site file to edit')
    .description('a commented site file and demo weather to edit')
    .argument('<folder>', 'where to put them; made if it is not there')
    .option('--ask', 'put eight questions, write the file from them (a pipe: a line each)')
    .addHelpText(
      'after',
      '\nExamples:\n  wintergap start my-place && wintergap year my-place/site.yaml\n  wintergap start my-place --ask',
    )
    .action(async (folder: string, { ask }: { ask?: boolean }) => {
      if (ask) await (await import('../answers/start-asked.js')).answerStartAsked(folder);
      else await (await import('../answers/start.js')).answerStart(folder);
    });
}
