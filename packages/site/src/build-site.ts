import { join } from 'node:path';
import type * as z from 'zod';
import { readPartLists } from './document/part-lists.js';
import { SiteError, type SiteProblem } from './document/site-problem.js';
import { type SiteFile, siteOfDocument } from './load-site.js';
import type { siteSchema } from './schema/site-schema.js';

/** One design as a site file would have it: the same keys, and the same texts with units, such as `capacity: '1000 Ah'`. */
export type DesignInput = z.input<typeof siteSchema>;

/** A site as plain values: a design, and beside it what a site file has there. */
export type SiteInput = DesignInput & {
  /** Changes to the design, by the name of the variant. */
  variants?: Readonly<Record<string, object>>;
  /** Tables of modules, from which an array names its own. */
  modules?: string | readonly string[];
  sweep?: object;
  size?: object;
  carry?: object;
  costs?: object;
};

/**
 * The site that plain values describe, checked as a site file is.
 *
 * @param folder that relative paths of weather and load files count from
 * @throws SiteError with every problem found, each with the path of its keys
 */
export function buildSite(input: SiteInput, folder = '.'): SiteFile {
  const content = structuredClone(input) as Record<string, unknown>;
  const problems: SiteProblem[] = [];
  const lists = readPartLists(content, folder, problems);
  if (problems.length > 0) throw new SiteError(String(input.name), problems);
  // The site has no file: its name stands in messages, in the folder from which files are found.
  return siteOfDocument({ file: join(folder, String(input.name)), content, places: new Map(), lists });
}
