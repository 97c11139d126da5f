import { readFileSync } from 'node:fs';

/** The program's version. */
export const version = (): string =>
  JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version as string;
