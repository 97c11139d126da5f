import type { Command, Option } from 'commander';

/** What could stand at the place of the last word. */
export interface Candidate {
  word: string;
  about: string;
}

/**
 * What a shell offers for the last of the words on a command line; nothing where a file or a number belongs.
 *
 * @param words those behind the program's name, up to the cursor; the last may be empty or a beginning
 */
export async function candidatesFor(program: Command, words: readonly string[]): Promise<Candidate[]> {
  const before = words.slice(0, -1).filter((word) => word !== '=');
  const beginning = words.at(-1) ?? '';
  const [name, ...rest] = before;
  const commands = program.createHelp().visibleCommands(program);
  if (name === undefined) {
    if (beginning.startsWith('-')) return program.createHelp().visibleOptions(program).map(asCandidate);
    return commands.map((command) => ({ word: command.name(), about: command.summary() || command.description() }));
  }
  if (name === 'help') return candidatesFor(program, ['']);
  const command = program.commands.find((one) => one.name() === name);
  if (!command) return [];
  const asked = rest.at(-1) === undefined ? undefined : optionOf(command, rest.at(-1)!);
  if (asked && (asked.required || asked.optional)) return valuesOf(asked, command, rest);
  if (beginning.startsWith('-')) return optionsLeft(command, rest);
  const choices = command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []);
  const isOpen = command.registeredArguments.at(-1)?.variadic ?? false;
  const given = argumentsIn(command, rest);
  if (given.length < command.registeredArguments.length || isOpen) {
    return choices.map((word) => ({ word, about: '' }));
  }
  return optionsLeft(command, rest);
}

const flagOf = (option: Option): string => option.long ?? option.short ?? '';
const asCandidate = (option: Option): Candidate => ({ word: flagOf(option), about: option.description });

const optionOf = (command: Command, word: string): Option | undefined =>
  command.options.find(({ long, short }) => word === long || word === short);

const optionsLeft = (command: Command, words: readonly string[]): Candidate[] =>
  command
    .createHelp()
    .visibleOptions(command)
    .map(asCandidate)
    .filter(({ word }) => !words.includes(word));

/** The words that are neither options nor their values. */
function argumentsIn(command: Command, words: readonly string[]): string[] {
  return words.filter((word, i) => {
    const before = i > 0 ? optionOf(command, words[i - 1]!) : undefined;
    return !word.startsWith('-') && !(before?.required || before?.optional);
  });
}

async function valuesOf(option: Option, command: Command, words: readonly string[]): Promise<Candidate[]> {
  if (option.argChoices) return option.argChoices.map((word) => ({ word, about: '' }));
  if (option.long === '--units') return ['metric', 'us'].map((word) => ({ word, about: '' }));
  if (option.long !== '--variant' && option.long !== '--array') return [];
  const [file] = argumentsIn(command, words);
  if (file === undefined) return [];
  const { namesInFile } = await import('./site-names.js');
  const { variants, arrays } = namesInFile(file);
  return (option.long === '--variant' ? variants : arrays).map((word) => ({ word, about: '' }));
}
