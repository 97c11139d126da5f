import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { InputError } from '../input-error.js';
import { outputPlace } from './output-place.js';

/**
 * Writes a file whole or not at all: under another name beside it, then renamed. Through a link the file it leads to is
 * replaced and the link stays; into a pipe or a device the content is written as it is.
 *
 * @param inputs files that were read, as paths: none of them is written over
 * @throws InputError when the place cannot be written
 */
export function writeWhole(path: string, content: string, inputs: ReadonlySet<string> = new Set()): void {
  const place = outputPlace(path, inputs);
  const partial = `${place.path}.partial-${process.pid}`;
  try {
    if (place.kind === 'stream') {
      // What stands in a stream already stays: a standard output sent to a file is gone on with.
      writeFileSync(place.path, content, { flag: 'a' });
      return;
    }
    writeFileSync(partial, content, { flag: 'wx' });
    renameSync(partial, place.path);
  } catch (error) {
    // A reader that stops reading is no fault.
    if ((error as NodeJS.ErrnoException).code === 'EPIPE') return;
    if (place.kind === 'file') rmSync(partial, { force: true });
    throw new InputError(
      `${path}: cannot be written: ${(error as Error).message}; name a folder that you may write to`,
    );
  }
}
