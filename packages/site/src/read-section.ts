import type * as z from 'zod';
import { valueProblems } from './document/schema-issues.js';
import { locate } from './document/site-document.js';
import { pathText, SiteError } from './document/site-problem.js';
import type { SiteFile } from './load-site.js';

/**
 * Reads one of the keys around the design, such as `sweep`, by its own schema.
 *
 * @returns `undefined` when the file has no such key
 * @throws SiteError with line, column and path of every problem in it
 */
export function readSection<Schema extends z.ZodType>(
  { document, file }: SiteFile,
  key: string,
  schema: Schema,
): z.output<Schema> | undefined {
  const written = document.content[key];
  if (written === undefined) return undefined;
  const result = schema.safeParse(written);
  if (result.success) return result.data;
  throw new SiteError(
    file,
    valueProblems(result.error).map(({ path, at, message }) => ({
      ...locate(document, [key, ...at]),
      path: pathText([key, ...path]),
      message,
    })),
  );
}
