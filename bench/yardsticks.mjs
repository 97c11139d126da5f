// What the program is held against beside a bare Node.js: the balance in compiled C.
import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { scratch } from './place.mjs';
import { plantAsDoubles } from './plant-doubles.mjs';

/** The very same equations, tables and cuts as packages/year/src/loop, for a place such as the honey house. */
const source = join(import.meta.dirname, 'balance.c');

/**
 * The balance of a plant in C, compiled with -O2.
 *
 * @returns a function that runs the year some times from a charge of 0.8 and gives its engine hours, the charge at its end
 * and the ns an hour of the fastest run took; `null` where there is no compiler
 */
export function compiledBalance(plant) {
  if (spawnSync('cc', ['--version']).status !== 0) return null;
  const program = scratch('balance');
  const input = scratch('plant');
  execFileSync('cc', ['-O2', '-o', program, source, '-lm']);
  writeFileSync(input, new Uint8Array(Float64Array.from(plantAsDoubles(plant)).buffer));
  return (runs) => {
    const printed = execFileSync(program, [input, String(runs)], { encoding: 'utf8' });
    const [hours, charge, ns] = printed.split(' ').map(Number);
    return { hours, charge, ns };
  };
}
