import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { inputFiles, type SiteFile } from '@wintergap/site';
import { version } from '../version.js';
import type { SweepColumns } from './row.js';

/** Keys of the site file on which no design of a sweep depends. */
const withoutEffect = ['size', 'carry'];

/**
 * Thirty-two hexadecimal digits that are the same when the results will be: made from the program's version, the
 * values in the site file (not its comments and spacing) and the content of every other file that its designs read, also of
 * those found by a pattern or in a folder.
 * Common years and their seed count too. Paths count only as written, so that the parts of a sweep may run in different folders.
 */
export function sweepFingerprint(site: SiteFile, years: SweepColumns['years'] = null): string {
  const { file, document } = site;
  const hash = createHash('sha256').update(`wintergap ${version()}\n`);
  const content = Object.fromEntries(Object.entries(document.content).filter(([key]) => !withoutEffect.includes(key)));
  hash.update(JSON.stringify(content));
  hash.update(JSON.stringify(years));
  for (const path of inputFiles(site)) {
    // A file that is not there is told of by whoever reads it.
    if (path !== resolve(file) && existsSync(path))
      hash.update(createHash('sha256').update(readFileSync(path)).digest());
  }
  return hash.digest('hex').slice(0, 32);
}
