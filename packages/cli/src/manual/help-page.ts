import type { Command, Help } from 'commander';

/**
 * The help of a command: half a screen, a line for each option. Of the program itself less, with the commands in two columns.
 * What does not fit stands in the manual page.
 */
export function helpPage(command: Command, helper: Help): string {
  if (command.parent !== null) return commandPage(command, helper);
  const commands = helper.visibleCommands(command).filter((one) => one.name() !== 'help');
  const widest = Math.max(...commands.map((one) => one.name().length));
  const cells = commands.map((one) => `  ${one.name().padEnd(widest)} ${one.summary()}`);
  const half = Math.ceil(cells.length / 2);
  const leftWidth = Math.max(...cells.slice(0, half).map((cell) => cell.length));
  const rows = cells.slice(0, half).map((cell, i) => `${cell.padEnd(leftWidth)}${cells[half + i] ?? ''}`.trimEnd());
  return [
    `Usage: ${command.name()} COMMAND SITE [options]      more: ${command.name()} COMMAND --help`,
    'Generator hours, fuel, throttling, bank of a place beyond the power line.',
    '',
    ...rows,
    '',
    `Example: ${command.name()} start my-place && ${command.name()} year my-place/site.yaml\n`,
  ].join('\n');
}

function commandPage(command: Command, helper: Help): string {
  const terms = [
    ...command.registeredArguments.map((one) => [`<${helper.argumentTerm(one)}>`, helper.argumentDescription(one)]),
    ...helper
      .visibleOptions(command)
      .filter(({ long }) => long !== '--help')
      .map((one) => [helper.optionTerm(one), helper.optionDescription(one)]),
  ] as const;
  const widest = Math.max(...terms.map(([term]) => term!.length));
  return [
    `Usage: ${helper.commandUsage(command)}`,
    helper.commandDescription(command),
    '',
    ...terms.map(([term, about]) => `  ${term!.padEnd(widest)}  ${about}`),
    '',
  ].join('\n');
}
