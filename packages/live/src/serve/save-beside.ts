import { writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { parseSite, SiteError } from '@wintergap/site';

/** A site file cannot be written where it was to go; the message says why. */
export class CannotSave extends Error {
  override readonly name = 'CannotSave';
}

/**
 * Writes a site file beside another, in a file that is not there yet.
 *
 * @param sent name and text, from a page
 * @returns the name of the file
 * @throws CannotSave for what is no site file, and for a name that is taken or leads elsewhere
 */
export function saveBeside(siteFile: string, sent: unknown): string {
  const { name, text } = (sent ?? {}) as { name?: unknown; text?: unknown };
  if (typeof name !== 'string' || typeof text !== 'string') throw new CannotSave('expected a name and a text');
  if (name !== basename(name) || !/^[^\p{Cc}/\\:*?"<>|.][^\p{Cc}/\\:*?"<>|]*\.ya?ml$/u.test(name)) {
    throw new CannotSave(`"${name}" is no name for a site file; expected one such as "place steeper.yaml"`);
  }
  const path = join(dirname(siteFile), name);
  try {
    parseSite(text, path);
    // Never over a file that is there, and never through a link.
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    if (error instanceof SiteError) throw new CannotSave(error.message);
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new CannotSave(code === 'EEXIST' ? `there is a file ${name} already; choose another name` : message);
  }
  return name;
}
