import { dirname, resolve } from 'node:path';
import type { SiteFile } from './load-site.js';

/** Absolute paths of every file a site reads, itself included: nothing may be written onto them. */
export function inputFiles({ file, base, variants }: SiteFile): Set<string> {
  const files = new Set([resolve(file)]);
  const add = (name: string) => files.add(resolve(dirname(file), name));
  for (const { weather, measuredLoad } of [base, ...variants.values()]) {
    if (!('months' in weather)) for (const name of [weather.file, ...(weather.otherYears ?? [])]) add(name);
    if (measuredLoad) add(measuredLoad.file);
  }
  return files;
}
