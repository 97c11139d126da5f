import { readdirSync, readFileSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { mustBeBuilt, program, programSources } from './built-program.js';

test('a build older than a source of the program is refused, with the file and what to do', () => {
  expect(statSync(program).isFile()).toBe(true);
  const source = programSources().find((file) => file.endsWith('ground/src/angles.ts'))!;
  const { atime, mtime } = statSync(source);
  try {
    utimesSync(source, atime, new Date(Date.now() + 60_000));
    expect(mustBeBuilt).toThrow(/older than packages\/ground\/src\/angles\.ts: run npm run build first/);
  } finally {
    utimesSync(source, atime, mtime);
  }
  expect(mustBeBuilt).not.toThrow();
});

const bundle = new URL('../packages/cli/bundle/', import.meta.url).pathname;

/** Files that are loaded with one of the bundle: itself and all that it imports at once. */
function loadedWith(entry: string): Set<string> {
  const found = new Set([readdirSync(bundle).find((file) => file === `${entry}.js` || file.startsWith(`${entry}-`))!]);
  for (const file of found) {
    const text = readFileSync(join(bundle, file), 'utf8');
    for (const [, name] of text.matchAll(/(?:from|import)"\.\/([\w-]+\.js)"/g)) found.add(name!);
  }
  return found;
}

test('help, slips and a site file that is not there wait for no room; a year is in few files', () => {
  const forYear = loadedWith('year');
  const atFirst = [...loadedWith('main'), ...loadedWith('site-text')];
  expect(forYear).toContain('core.js');
  expect(forYear.size).toBeLessThan(10);
  expect(atFirst).not.toContain('core.js');
  // The schema library stands for all that reads site files.
  for (const file of atFirst) expect(readFileSync(join(bundle, file), 'utf8')).not.toContain('_zod');
});
