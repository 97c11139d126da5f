// What the program is held against beside a bare Node.js: the balance in compiled C.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { scratch } from './place.mjs';

/** The very same equations and cuts as packages/year/src/loop/balance.ts, with a `main` that prints ns an hour. */
const source = join(import.meta.dirname, 'balance.c');

/**
 * The balance in C, compiled with -O2.
 *
 * @returns a function that runs years of it once and gives ns an hour; `null` where there is no source or no compiler
 */
export function compiledBalance() {
  if (!existsSync(source) || spawnSync('cc', ['--version']).status !== 0) return null;
  const program = scratch('balance');
  execFileSync('cc', ['-O2', '-o', program, source, '-lm']);
  return () => Number(execFileSync(program, { encoding: 'utf8' }));
}
