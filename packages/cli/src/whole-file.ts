import { existsSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { InputError } from './input-error.js';

/**
 * Writes a file whole or not at all: under another name beside it, then renamed.
 *
 * @param inputs files that were read, as absolute paths: none of them is written over
 * @throws InputError when the place cannot be written
 */
export function writeWhole(path: string, content: string, inputs: ReadonlySet<string> = new Set()): void {
  if (inputs.has(resolve(path))) {
    throw new InputError(`${path}: is one of the files this run reads, and is left as it is; name another file`);
  }
  const partial = `${path}.partial-${process.pid}`;
  if (!existsSync(dirname(path)) || !statSync(dirname(path)).isDirectory()) {
    throw new InputError(`${path}: cannot be written: there is no folder ${dirname(path)}; make it first`);
  }
  try {
    writeFileSync(partial, content);
    renameSync(partial, path);
  } catch (error) {
    rmSync(partial, { force: true });
    throw new InputError(
      `${path}: cannot be written: ${(error as Error).message}; name a folder that you may write to`,
    );
  }
}
