import { type Command, Help } from 'commander';

/**
 * The help of a command; of the program itself a page of less than half a screen, with the commands in two columns.
 */
export function helpPage(command: Command, helper: Help): string {
  if (command.parent !== null) return Help.prototype.formatHelp.call(helper, command, helper);
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
