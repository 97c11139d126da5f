import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { SiteFile } from '@wintergap/site';
import { version } from '../version.js';
import type { SweepColumns } from './row.js';

/** Keys of the site file on which no design of a sweep depends. */
const withoutEffect = ['size', 'carry'];

/**
 * Thirty-two hexadecimal digits that are the same when the results will be: made from the program's version, the
 * values in the site file (not its comments and spacing) and the content of every file that it names, weather first.
 * Common years and their seed count too. Paths count only as written, so that the parts of a sweep may run in different folders.
 */
export function sweepFingerprint({ file, document }: SiteFile, years: SweepColumns['years'] = null): string {
  const hash = createHash('sha256').update(`wintergap ${version()}\n`);
  const content = Object.fromEntries(Object.entries(document.content).filter(([key]) => !withoutEffect.includes(key)));
  hash.update(JSON.stringify(content));
  hash.update(JSON.stringify(years));
  for (const path of namedFiles(content, dirname(file))) {
    hash.update(createHash('sha256').update(readFileSync(path)).digest());
  }
  return hash.digest('hex').slice(0, 32);
}

/** The files that texts in the site file lead to, in the order of the texts. */
function namedFiles(value: unknown, folder: string): string[] {
  if (typeof value === 'string') {
    const path = resolve(folder, value);
    return isFile(path) ? [path] : [];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap((inner) => namedFiles(inner, folder));
}

function isFile(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
