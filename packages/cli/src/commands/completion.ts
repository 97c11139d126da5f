import { Argument, type Command } from 'commander';
import { type Shell, shellScripts, shells } from '../completion/shell-scripts.js';
import { print } from '../output/print.js';

const example = `
Examples, for the start of a shell:
  eval "$(wintergap completion bash)"      # in .bashrc; or zsh, in .zshrc
  wintergap completion fish | source       # in config.fish`;

export function addCompletion(program: Command): void {
  program
    .command('completion')
    .summary('completion for your shell')
    .description('completion of commands, options, variants and arrays, for bash, zsh or fish')
    .addArgument(new Argument('<shell>', 'the shell').choices(shells))
    .addHelpText('after', example)
    .action((shell: Shell) => {
      print(shellScripts[shell]);
    });
  program
    .command('complete', { hidden: true })
    .description('what could stand at the end of these words, for a shell')
    .argument('[words...]', "words behind the program's name, the last as far as it is typed")
    .action(async (words: string[]) => {
      const { candidatesFor } = await import('../completion/candidates.js');
      const lines = (await candidatesFor(program, words)).map(({ word, about }) => `${word}\t${about}\n`);
      print(lines.join(''));
    });
}
