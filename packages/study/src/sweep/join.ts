import { closeSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { wholeSweep } from '../design/order.js';
import { SweepFileError } from './file-error.js';
import { headLines } from './format.js';
import { headerPositions, type SweepHeader } from './header.js';
import { endsWhole, fileHeader, formatOf, notASweep, readRows } from './lines.js';
import type { SweepRow } from './row.js';

interface PartFile {
  path: string;
  header: SweepHeader;
}

/**
 * Puts the files of a sweep's parts together to the file that one run of the whole sweep would have written, to the
 * last byte. It is written whole or not at all.
 *
 * @param take is handed every row
 * @returns the joined file's header
 * @throws SweepFileError when the parts are of different sweeps, or designs are missing or there twice
 */
export async function joinSweep(
  out: string,
  paths: readonly string[],
  take: (row: SweepRow) => void,
): Promise<SweepHeader> {
  const format = formatOf(out);
  const parts = await readParts(paths, out);
  const { axes, columns, fingerprint, order, site } = parts[0]!.header;
  const header: SweepHeader = { axes, columns, fingerprint, order, site, part: wholeSweep };
  checkCover(parts, headerPositions(header).to);
  const partial = `${out}.partial-${process.pid}`;
  let descriptor: number | null = null;
  try {
    descriptor = openSync(partial, 'w');
    writeFileSync(descriptor, `${headLines(format, header).join('\n')}\n`);
    for (const part of parts) await copyRows(part, descriptor, take);
    closeSync(descriptor);
    descriptor = null;
    renameSync(partial, out);
  } catch (error) {
    if (descriptor !== null) closeSync(descriptor);
    rmSync(partial, { force: true });
    if (error instanceof SweepFileError) throw error;
    throw new SweepFileError(`${out}: cannot be written: ${(error as Error).message}`);
  }
  return header;
}

/** The parts in the order of their designs. */
async function readParts(paths: readonly string[], out: string): Promise<PartFile[]> {
  const parts: PartFile[] = [];
  for (const path of paths) {
    if (resolve(path) === resolve(out))
      throw new SweepFileError(`${path}: is a part and cannot be the joined file too`);
    if (formatOf(path) !== formatOf(out)) throw new SweepFileError(`${path}: is not of the format of ${out}`);
    const header = await fileHeader(path);
    if (!header) throw notASweep(path);
    const first = parts[0];
    if (first && first.header.fingerprint !== header.fingerprint) {
      throw new SweepFileError(
        `${path}: is not of the same sweep as ${first.path}: the designs, the weather or the program's version differ`,
      );
    }
    parts.push({ path, header });
  }
  const from = ({ header }: PartFile) => headerPositions(header).from;
  return parts.sort((a, b) => from(a) - from(b));
}

/** Checks that the parts meet end to end, so that no design is missing and none is there twice. */
function checkCover(parts: readonly PartFile[], designs: number): void {
  const problems: string[] = [];
  let at = 0;
  let before = '';
  for (const { path, header } of parts) {
    const { from, to } = headerPositions(header);
    if (from > at) problems.push(missing(at, from));
    if (from < at && to > from) {
      problems.push(`${spanText(from, Math.min(at, to))} of the sweep are there twice, in ${before} and ${path}`);
    }
    if (to > at) {
      at = to;
      before = path;
    }
  }
  if (at < designs) problems.push(missing(at, designs));
  if (problems.length > 0) throw new SweepFileError(problems.join('\n'));
}

const missing = (from: number, to: number) => `${spanText(from, to)} of the sweep are missing: no part holds them`;
const spanText = (from: number, to: number) => `designs ${from + 1} to ${to}`;

async function copyRows({ path, header }: PartFile, descriptor: number, take: (row: SweepRow) => void): Promise<void> {
  let text = '';
  const flush = () => {
    writeFileSync(descriptor, text);
    text = '';
  };
  const rows = await readRows(path, header, (row, line) => {
    take(row);
    text += `${line}\n`;
    if (text.length > 64 * 1024) flush();
  });
  flush();
  const { from, to } = headerPositions(header);
  if (rows < to - from || !endsWhole(path)) {
    throw new SweepFileError(`${path}: holds ${rows} of its ${to - from} designs; run this part again to finish it`);
  }
}
