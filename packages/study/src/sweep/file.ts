import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { SweepFileError } from './file-error.js';
import { headLines, rowLine, type SweepFormat } from './format.js';
import { planHeader } from './header.js';
import { dropTornLine, fileHeader, formatOf, notASweep, readRows } from './lines.js';
import { lockSweepFile, type SweepLock } from './lock.js';
import type { SweepPlan } from './plan.js';
import type { SweepRow } from './row.js';

/** A sweep's file, open for the rows still to come. */
export interface SweepFile {
  /** Rows that were there already. */
  done: number;
  /** Writes rows behind those that are there. */
  append(rows: readonly SweepRow[]): void;
  /** Has the disk keep what was written, and lets other runs write. */
  close(): void;
}

/**
 * Opens the file of a plan: a new one, or one that an interrupted run of the same plan left. Of the latter a torn last
 * line is dropped, and each row that is there is handed to `take` and checked. Rows are only ever appended.
 *
 * @throws SweepFileError when the file is of another sweep, is being written by another run, or cannot be written
 */
export async function openSweepFile(path: string, plan: SweepPlan, take: (row: SweepRow) => void): Promise<SweepFile> {
  const format = formatOf(path);
  mustBeRegular(path);
  accessing(path, () => mkdirSync(dirname(path), { recursive: true }));
  const lock = lockSweepFile(path);
  try {
    return await openLocked(path, plan, take, format, lock);
  } catch (error) {
    lock.release();
    throw error;
  }
}

async function openLocked(
  path: string,
  plan: SweepPlan,
  take: (row: SweepRow) => void,
  format: SweepFormat,
  lock: SweepLock,
): Promise<SweepFile> {
  const header = planHeader(plan);
  const head = `${headLines(format, header).join('\n')}\n`;
  const isNew = !existsSync(path) || accessing(path, () => isTornHead(path, head));
  let done = 0;
  if (!isNew) {
    await checkSameSweep(path, plan);
    accessing(path, () => dropTornLine(path));
    done = await readRows(path, header, take);
  }
  const descriptor = accessing(path, () => openSync(path, isNew ? 'w' : 'a'));
  const write = (text: string) => accessing(path, () => writeFileSync(descriptor, text));
  if (isNew) write(head);
  return {
    done,
    append(rows) {
      lock.mustHold();
      write(rows.map((row) => `${rowLine(format, header, row)}\n`).join(''));
    },
    close: () =>
      accessing(path, () => {
        fsyncSync(descriptor);
        closeSync(descriptor);
        lock.release();
      }),
  };
}

/** Whether a file holds nothing, or only the beginning of this head: a run that was killed at once. */
function isTornHead(path: string, head: string): boolean {
  const { size } = statSync(path);
  return size < Buffer.byteLength(head) && head.startsWith(readFileSync(path, 'utf8').replace(/\uFFFD$/, ''));
}

async function checkSameSweep(path: string, plan: SweepPlan): Promise<void> {
  const found = await fileHeader(path);
  if (!found) throw notASweep(path);
  if (found.fingerprint !== plan.fingerprint) {
    throw new SweepFileError(
      `${path}: holds a sweep of other designs, weather or program version, and is left as it is; name another file, or remove this one to begin anew`,
    );
  }
  const { part } = plan;
  if (found.part.index !== part.index || found.part.of !== part.of) {
    throw new SweepFileError(
      `${path}: holds part ${found.part.index}/${found.part.of} of this sweep, not ${part.index}/${part.of}; name another file`,
    );
  }
}

/** A sweep goes on where it stopped, so its rows must stay: not in a pipe, nor on a device. */
function mustBeRegular(path: string): void {
  if (existsSync(path) && !statSync(path).isFile()) {
    throw new SweepFileError(`${path}: is no regular file, in which a sweep could go on; name another`);
  }
}

function accessing<Result>(path: string, act: () => Result): Result {
  try {
    return act();
  } catch (error) {
    throw new SweepFileError(`${path}: cannot be read or written: ${(error as Error).message}`);
  }
}
