import { resolve } from 'node:path';
import type { SiteFile } from './load-site.js';

/** Absolute paths of every file a site reads, itself included: nothing may be written onto them. */
export function inputFiles({ file, base, variants, document }: SiteFile): Set<string> {
  const files = new Set([resolve(file), ...document.lists.paths]);
  for (const { weather, measuredLoad } of [base, ...variants.values()]) {
    if (!('months' in weather)) for (const { path } of [weather.file, ...(weather.otherYears ?? [])]) files.add(path);
    if (measuredLoad) files.add(measuredLoad.file.path);
  }
  return files;
}
