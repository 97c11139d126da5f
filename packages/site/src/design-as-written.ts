import type { Site } from './document/origin.js';
import { valueProblems } from './document/schema-issues.js';
import { pathText, SiteError } from './document/site-problem.js';
import { siteSchema } from './schema/site-schema.js';
import { unsaidIn } from './taken-as.js';

/**
 * The design that written values describe. Files that it names are left as written: nothing is looked for on a disk.
 *
 * @param written keys and values as in a site file, without what stands around a design
 * @param file named in messages
 * @throws SiteError when the design is not right
 */
export function designAsWritten(written: unknown, file: string): Site {
  const result = siteSchema.safeParse(written);
  if (result.success) {
    return { ...result.data, origin: { file, within: '', places: new Map(), unsaid: unsaidIn(written) } };
  }
  throw new SiteError(
    file,
    valueProblems(result.error).map(({ path, message }) => ({ line: 0, column: 0, path: pathText(path), message })),
  );
}
