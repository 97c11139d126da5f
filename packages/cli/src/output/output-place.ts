import { lstatSync, realpathSync, type Stats, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { InputError } from '../input-error.js';

/** Where an output goes. */
export interface OutputPlace {
  /** The file itself, links followed, or the pipe or device as named. */
  path: string;
  /** A regular file is replaced whole; what is none is written into and stays what it is. */
  kind: 'file' | 'stream';
}

/**
 * Finds out what a path leads to, through links.
 *
 * @param inputs files that were read, as paths: none of them is written over, by whatever name
 * @throws InputError when it leads to an input, a folder, or nowhere that can be written
 */
export function outputPlace(path: string, inputs: ReadonlySet<string> = new Set()): OutputPlace {
  const there = statOf(path);
  if (there === null) {
    const folder = dirname(path);
    if (!(statOf(folder)?.isDirectory() ?? false)) {
      throw new InputError(`${path}: cannot be written: there is no folder ${folder}; make it first`);
    }
    if (isDanglingLink(path)) {
      throw new InputError(`${path}: cannot be written: it is a link to nothing; remove it or name another file`);
    }
    return { path: join(realpathSync(folder), basename(path)), kind: 'file' };
  }
  if (there.isDirectory()) throw new InputError(`${path}: cannot be written: it is a folder; name a file in it`);
  if (!there.isFile() || isOwnStream(path)) return { path, kind: 'stream' };
  for (const input of inputs) {
    const read = statOf(input);
    if (read && read.dev === there.dev && read.ino === there.ino) {
      throw new InputError(
        `${path}: is one of the files this run reads (${input}), and is left as it is; name another file`,
      );
    }
  }
  return { path: realpathSync(path), kind: 'file' };
}

/**
 * Checks all outputs of a run before anything is run: each can be written, and no two of them are one file.
 *
 * @param outputs paths by the option that names them; those not asked for are `undefined`
 * @throws InputError naming both options
 */
export function checkOutputs(outputs: Readonly<Record<string, string | undefined>>, inputs: ReadonlySet<string>): void {
  const taken = new Map<string, string>();
  for (const [option, path] of Object.entries(outputs)) {
    if (path === undefined) continue;
    const place = outputPlace(path, inputs);
    if (place.kind === 'stream') continue;
    const other = taken.get(place.path);
    if (other !== undefined) {
      throw new InputError(`${other} and ${option} both name ${path}: one would overwrite the other; name two files`);
    }
    taken.set(place.path, option);
  }
}

function statOf(path: string): Stats | null {
  try {
    return statSync(path);
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    throw new InputError(`${path}: cannot be reached: ${message}; name a path that you may read and write`);
  }
}

function isDanglingLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}

/** A stream of this process, such as `/dev/stdout`, which may be sent to a file: that one is written into as it is. */
const isOwnStream = (path: string): boolean => /^\/(dev\/(fd\/|std)|proc\/(self|\d+)\/fd\/)/.test(resolve(path));
