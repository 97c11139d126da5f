import type { Command } from 'commander';

/** What the manual page says of a command beyond its help. */
const texts = new WeakMap<Command, string[]>();

/** Adds a paragraph that only the manual page has. */
export function addManualText(command: Command, text: string): Command {
  texts.set(command, [...manualTextOf(command), text]);
  return command;
}

export const manualTextOf = (command: Command): readonly string[] => texts.get(command) ?? [];
