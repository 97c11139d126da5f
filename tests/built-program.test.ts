import { statSync, utimesSync } from 'node:fs';
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
