import type { Command } from 'commander';
import { manualTextOf } from './manual-text.js';

/** A line of text as roff takes it: strokes and hyphens as they are, no line taken as an order. */
const plain = (text: string): string =>
  text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replace(/^(?=[.'])/gm, '\\&');

/** An entry of a list: what is written, and what it says. */
const entry = (term: string, text: string): string => `.TP\n.B ${plain(term)}\n${plain(text)}\n`;

/** Text as it stands, such as examples. */
const asItStands = (text: string): string => `.PP\n.nf\n${plain(text)}\n.fi\n`;

/** What a command's help says behind its options: examples and the like. */
function afterOptions(command: Command): string {
  let shown = '';
  const { writeOut, ...output } = command.configureOutput();
  command.configureOutput({ ...output, writeOut: (text) => (shown += text) });
  command.outputHelp();
  command.configureOutput({ ...output, ...(writeOut && { writeOut }) });
  return shown.slice(command.helpInformation().length).trim();
}

function commandPart(command: Command): string {
  const helper = command.createHelp();
  const options = helper.visibleOptions(command).filter(({ long }) => long !== '--help');
  const after = afterOptions(command);
  return [
    `.SS ${plain(`${command.name()} ${command.usage()}`)}\n${plain(`${command.description()}.`)}\n`,
    ...command.registeredArguments.map((argument) => entry(helper.argumentTerm(argument), argument.description)),
    ...options.map((option) => entry(helper.optionTerm(option), helper.optionDescription(option))),
    after === '' ? '' : asItStands(after),
    ...manualTextOf(command).map(asItStands),
  ].join('');
}

/** The manual page of the program, made from its help. */
export function manPage(program: Command): string {
  const commands = program
    .createHelp()
    .visibleCommands(program)
    .filter((command) => command.name() !== 'help');
  return `.TH WINTERGAP 1 "" "wintergap ${program.version()}"
.SH NAME
wintergap \\- generator hours of a place beyond the power line
.SH SYNOPSIS
.B wintergap
.I COMMAND SITE
[options]
.SH DESCRIPTION
${plain(program.description())}
Results go to the standard output, progress and errors to the standard error output.
.SH COMMANDS
${commands.map(commandPart).join('')}.SH EXIT STATUS
${entry('0', 'Done.')}${entry('1', 'The answer is no: a check failed, a target cannot be met.')}${entry('2', 'The input is wrong.')}${entry('3', 'A fault of the program.')}.SH EXAMPLES
${asItStands('wintergap start my-place && wintergap year my-place/site.yaml')}`;
}
