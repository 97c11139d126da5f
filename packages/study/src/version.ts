import { readFileSync } from 'node:fs';

// Beside the folder of this file, be that the sources, the build, or the program's bundle.
export const version = (): string =>
  JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version as string;
