import { designAsWritten } from './design-as-written.js';
import type { Site } from './document/origin.js';
import { withModules } from './document/part-lists.js';
import { pathText, SiteError } from './document/site-problem.js';
import { fromOrigin } from './from-origin.js';
import { type SiteFile, variantOf, writtenDesign } from './load-site.js';

/**
 * The base design, or a variant, with some values changed: `{ 'arrays.0.strings': 4, 'bank.capacity': '800 Ah' }`.
 * Values are written as in the site file. An item of a list is named by its number or its `name`.
 *
 * @throws SiteError when a path leads nowhere or the changed design is not right
 */
export function changedDesign(site: SiteFile, changes: Readonly<Record<string, unknown>>, variant?: string): Site {
  const { document, file } = site;
  const base = writtenDesign(document);
  const variants = document.content.variants as Record<string, unknown> | undefined;
  const written = structuredClone(variant === undefined ? base : variantOf(base, variants?.[variant], document));
  for (const [path, value] of Object.entries(changes)) setAtPath(written, path, value, file);
  const { design: whole, problems } = withModules(written, document.lists);
  if (problems.length > 0) {
    throw new SiteError(
      file,
      problems.map(({ path, message }) => ({ line: 0, column: 0, path: pathText(path), message })),
    );
  }
  const design = designAsWritten(whole, file);
  return fromOrigin(design, design.origin!);
}

function setAtPath(written: unknown, path: string, value: unknown, file: string): void {
  const keys = path.split('.');
  const last = keys.pop()!;
  let at = written;
  const lost = (key: string): never => {
    const known = typeof at === 'object' && at !== null ? Object.keys(at) : [];
    const hint = known.length > 0 ? `; there are ${known.join(', ')}` : '';
    throw new SiteError(file, [{ line: 0, column: 0, path, message: `"${key}" leads nowhere in this design${hint}` }]);
  };
  const indexOf = (list: unknown[], key: string): string | number => {
    const named = list.findIndex((item) => (item as { name?: unknown } | null)?.name === key);
    return named >= 0 ? named : key;
  };
  for (const key of keys) {
    const next = Array.isArray(at) ? at[Number(indexOf(at, key))] : (at as Record<string, unknown> | undefined)?.[key];
    if (typeof next !== 'object' || next === null) lost(key);
    at = next;
  }
  if (Array.isArray(at)) {
    const index = Number(indexOf(at, last));
    if (!(index in at)) lost(last);
    at[index] = value;
  } else if (value === null) {
    delete (at as Record<string, unknown>)[last];
  } else {
    (at as Record<string, unknown>)[last] = value;
  }
}
