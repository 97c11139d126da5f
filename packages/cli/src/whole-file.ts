import { existsSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { InputError } from './input-error.js';

/**
 * Writes a file whole or not at all: under another name beside it, then renamed.
 *
 * @throws InputError when the place cannot be written
 */
export function writeWhole(path: string, content: string): void {
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
