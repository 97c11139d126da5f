import { isUtf8 } from 'node:buffer';
import { readFileSync, type Stats, statSync } from 'node:fs';

/** A file that cannot be read as text: what it is instead, and what to do; the file itself is named by the caller. */
export class InputFileError extends Error {
  override readonly name = 'InputFileError';
  /** Of the system, such as `ENOENT`; absent where the system had no objection. */
  readonly code: string | undefined;
  /** Line from which on the file is not what it should be. */
  readonly line: number;

  constructor(message: string, code?: string, line: number = 1) {
    super(message);
    this.code = code;
    this.line = line;
  }
}

/** Largest input, bytes: 80 years of hours with 20 columns are about this. */
const mostBytes = 128e6;

/**
 * The text of a file that people wrote or saved. Nothing is opened but a regular file of sensible size: a pipe would
 * block and a device never end.
 *
 * @param otherwise what text that is not UTF-8 is taken as; `refused` where names in it would come out wrong
 * @throws InputFileError for what is no regular file, is too large, cannot be opened, or has another encoding
 */
export function readInputText(path: string, otherwise: 'latin1' | 'refused'): string {
  const bytes = readInputBytes(path);
  const wide = wideEncoding(bytes);
  if (wide) {
    throw new InputFileError(
      `is text in ${wide}, expected UTF-8; save it again as UTF-8 (in the editor's or spreadsheet's "save as")`,
    );
  }
  if (isUtf8(bytes)) return bytes.toString('utf8');
  if (otherwise === 'latin1') return bytes.toString('latin1');
  const line = firstLineNotUtf8(bytes);
  throw new InputFileError(
    `line ${line} is not UTF-8 but probably ISO 8859-1 or Windows-1252; save the file again as UTF-8 (in the editor's "save as")`,
    undefined,
    line,
  );
}

function readInputBytes(path: string): Buffer {
  try {
    const stats = statSync(path);
    if (!stats.isFile()) {
      const code = stats.isDirectory() ? 'EISDIR' : undefined;
      throw new InputFileError(`cannot be opened: it is ${kindOf(stats)}, expected a file`, code);
    }
    if (stats.size > mostBytes) {
      throw new InputFileError(
        `has ${Math.round(stats.size / 1e6)} MB, expected at most ${mostBytes / 1e6} MB; is it the right file?`,
      );
    }
    return readFileSync(path);
  } catch (error) {
    if (error instanceof InputFileError) throw error;
    const { code, message } = error as NodeJS.ErrnoException;
    throw new InputFileError(`cannot be opened (${code ?? message})`, code);
  }
}

function kindOf(stats: Stats): string {
  if (stats.isDirectory()) return 'a folder';
  if (stats.isFIFO()) return 'a pipe, whose content is to be saved first';
  if (stats.isSocket()) return 'a socket';
  return 'a device';
}

/** UTF-16 by its mark, or by the zero in every second byte that plain letters have in it. */
function wideEncoding(bytes: Buffer): string | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'UTF-16 (little endian)';
  if (first === 0xfe && second === 0xff) return 'UTF-16 (big endian)';
  if (bytes.length < 4) return null;
  if (first !== 0 && second === 0 && bytes[2] !== 0 && bytes[3] === 0) return 'UTF-16 (little endian)';
  if (first === 0 && second !== 0 && bytes[2] === 0 && bytes[3] !== 0) return 'UTF-16 (big endian)';
  return null;
}

function firstLineNotUtf8(bytes: Buffer): number {
  let line = 1;
  for (let from = 0; from < bytes.length; line++) {
    const newline = bytes.indexOf(10, from);
    const end = newline < 0 ? bytes.length : newline + 1;
    if (!isUtf8(bytes.subarray(from, end))) return line;
    from = end;
  }
  return line;
}
