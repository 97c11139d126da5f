import { closeSync, createReadStream, fstatSync, ftruncateSync, openSync, readSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { numberAt } from '../design/order.js';
import { SweepFileError } from './file-error.js';
import { formatOfName, headLines, readRow, type SweepFormat } from './format.js';
import { headerPositions, readHeader, type SweepHeader } from './header.js';
import type { SweepRow } from './row.js';

/**
 * The format a file is to have.
 *
 * @throws SweepFileError when its name does not say
 */
export function formatOf(path: string): SweepFormat {
  const format = formatOfName(path);
  if (format) return format;
  throw new SweepFileError(`${path}: expected a name that ends in .csv or .ndjson`);
}

export const notASweep = (path: string): SweepFileError =>
  new SweepFileError(`${path}: is not the file of a sweep and is left as it is; name another file`);

/** The header of a sweep's file; `null` when the file is empty. */
export async function fileHeader(path: string): Promise<SweepHeader | null> {
  for await (const line of lines(path)) {
    const header = readHeader(line);
    if (!header) throw notASweep(path);
    return header;
  }
  return null;
}

/**
 * Goes through the rows of a sweep's file from the first to the last and checks that they are the designs of its
 * header, each once and in order.
 *
 * @returns how many rows there are; fewer than the header asks for when the sweep was interrupted
 * @throws SweepFileError naming the line that does not belong
 */
export async function readRows(
  path: string,
  header: SweepHeader,
  take: (row: SweepRow, line: string) => void,
): Promise<number> {
  const format = formatOf(path);
  const head = headLines(format, header);
  const { from, to } = headerPositions(header);
  let lineNumber = 0;
  let rows = 0;
  for await (const line of lines(path)) {
    lineNumber++;
    const where = `${path} line ${lineNumber}`;
    if (lineNumber <= head.length) {
      if (line !== head[lineNumber - 1]) throw new SweepFileError(`${where}: found other columns than this sweep's`);
      continue;
    }
    const row = readRow(format, header, line);
    if (!row) throw new SweepFileError(`${where}: is not a row of this sweep; remove the file and run it again`);
    if (row === 'altered') {
      throw new SweepFileError(
        `${where}: was altered after it was written: its figures do not give its check sum; remove the file and run it again`,
      );
    }
    if (from + rows >= to) throw new SweepFileError(`${where}: design ${row.number} is one too many`);
    const expected = numberAt(header.order, from + rows);
    if (row.number !== expected) {
      throw new SweepFileError(
        `${where}: found design ${row.number}, expected design ${expected}: some are missing or there twice`,
      );
    }
    rows++;
    take(row, line);
  }
  return rows;
}

/** Cuts off what stands behind the last end of a line: a row that an interruption tore. */
export function dropTornLine(path: string): void {
  const descriptor = openSync(path, 'r+');
  try {
    const { size } = fstatSync(descriptor);
    const whole = wholeLength(descriptor, size);
    if (whole < size) ftruncateSync(descriptor, whole);
  } finally {
    closeSync(descriptor);
  }
}

/** Whether the last line of a file has its end. */
export function endsWhole(path: string): boolean {
  const descriptor = openSync(path, 'r');
  try {
    const { size } = fstatSync(descriptor);
    return wholeLength(descriptor, size) === size;
  } finally {
    closeSync(descriptor);
  }
}

/** Length of a file up to and with its last `\n`, found from the end. */
function wholeLength(descriptor: number, size: number): number {
  const piece = Buffer.alloc(64 * 1024);
  for (let end = size; end > 0; ) {
    const start = Math.max(end - piece.length, 0);
    const read = readSync(descriptor, piece, 0, end - start, start);
    const at = piece.subarray(0, read).lastIndexOf(10);
    if (at >= 0) return start + at + 1;
    end = start;
  }
  return 0;
}

async function* lines(path: string): AsyncGenerator<string> {
  const input = createReadStream(path);
  try {
    yield* createInterface({ input, crlfDelay: Infinity });
  } catch (error) {
    throw new SweepFileError(`${path}: cannot be read: ${(error as Error).message}`);
  } finally {
    input.destroy();
  }
}
