import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { lockSync, unlockSync } from 'proper-lockfile';
import { SweepFileError } from './file-error.js';

/** Who writes a sweep's file. */
interface Holder {
  process: number;
  host: string;
  since: string;
}

export interface SweepLock {
  /** @throws SweepFileError when the lock could not be kept, as on a machine that slept, and another run has the file. */
  mustHold(): void;
  release(): void;
}

/** After so long without a sign of life a lock is that of a run that is gone. */
const staleMs = 20_000;
const folderOf = (path: string) => `${path}.lock`;
const holderFile = (path: string) => `${path}.lock-holder`;

/**
 * Keeps other runs from writing a sweep's file until the lock is released. The lock of a run that was killed
 * is taken over: at once on the same machine, elsewhere after twenty seconds without a sign of life.
 *
 * @throws SweepFileError that says who holds it
 */
export function lockSweepFile(path: string): SweepLock {
  let isLost = false;
  const onCompromised = () => {
    isLost = true;
  };
  const take = () => lockSync(path, { realpath: false, stale: staleMs, lockfilePath: folderOf(path), onCompromised });
  try {
    take();
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code !== 'ELOCKED') throw new SweepFileError(`${path}: cannot be locked: ${message}`);
    const holder = readHolder(path);
    if (!holder || !isGone(holder)) throw new SweepFileError(heldText(path, holder));
    rmSync(folderOf(path), { recursive: true, force: true });
    take();
  }
  const holder: Holder = { process: process.pid, host: hostname(), since: new Date().toISOString() };
  writeFileSync(holderFile(path), JSON.stringify(holder));
  return {
    mustHold() {
      if (isLost) throw new SweepFileError(`${path}: another run has taken this file over; this one stops`);
    },
    release() {
      if (isLost) return;
      rmSync(holderFile(path), { force: true });
      unlockSync(path, { realpath: false, lockfilePath: folderOf(path) });
    },
  };
}

function heldText(path: string, holder: Holder | null): string {
  const who = holder
    ? `process ${holder.process} on ${holder.host} has been writing it since ${holder.since}`
    : 'another run is writing it';
  return `${path}: ${who}; wait for it, or name another file (--part i/n lets several runs share a sweep)`;
}

function readHolder(path: string): Holder | null {
  try {
    const { process: pid, host, since } = JSON.parse(readFileSync(holderFile(path), 'utf8')) as Partial<Holder>;
    return typeof pid === 'number' && host && since ? { process: pid, host, since } : null;
  } catch {
    return null;
  }
}

function isGone({ process: pid, host }: Holder): boolean {
  if (host !== hostname()) return false;
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ESRCH';
  }
}
