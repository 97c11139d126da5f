import { nearestHint } from './document/nearest-word.js';
import type { Site } from './document/origin.js';
import { itemsOfLoads, placeInTable, withAppliances, withModules } from './document/part-lists.js';
import { valueProblems } from './document/schema-issues.js';
import { locate, readDocument, type SiteDocument } from './document/site-document.js';
import { pathText, SiteError, type SiteProblem } from './document/site-problem.js';
import { fromOrigin } from './from-origin.js';
import { changedValues, type KnownDesign } from './schema/changed-values.js';
import { aroundDesign } from './schema/design.js';
import { text as nameText, shortened } from './schema/fields.js';
import { costsOfDesign } from './schema/price.js';
import { siteSchema } from './schema/site-schema.js';
import { readSiteText } from './site-text.js';
import { unsaidIn } from './taken-as.js';
import { mergeVariant } from './variants.js';

/** A site file that has been read and found right, variants and all: plain data, which may be handed to a worker. */
export interface SiteFile {
  /** The file, as the user named it. */
  file: string;
  base: Site;
  /** The base design with each variant's changes laid over it, in the order of the file. */
  variants: ReadonlyMap<string, Site>;
  /** The file as written, with the places of its values. */
  document: SiteDocument;
}

type WrittenDesign = Record<string, unknown>;

/**
 * Reads a site file.
 *
 * @throws SiteError with every problem found, each with line, column and path of keys
 */
export const loadSite = (file: string): SiteFile => parseSite(readSiteText(file), file);

/**
 * Reads the text of a site file.
 *
 * @param file named in messages; relative paths of other files count from its folder
 * @throws SiteError with every problem found, each with line, column and path of keys
 */
export const parseSite = (text: string, file: string): SiteFile => siteOfDocument(readDocument(text, file));

/**
 * The site that a document describes.
 *
 * @throws SiteError with every problem found
 */
export function siteOfDocument(document: SiteDocument): SiteFile {
  const { file } = document;
  const { variants: changes = {} } = document.content;
  const design = writtenDesign(document);
  const problems: SiteProblem[] = [];
  const base = check(design, document, [], problems, null);
  const variants = new Map<string, Site>();
  if (typeof changes !== 'object' || changes === null || Array.isArray(changes)) {
    problems.push({
      ...locate(document, ['variants']),
      path: 'variants',
      message: 'expected a mapping of names to changes, such as steep: { arrays: [{ name: garden pole, ... }] }',
    });
  } else {
    for (const [name, change] of Object.entries(changes)) {
      const named = nameText.safeParse(name);
      if (!named.success) {
        const { message } = named.error.issues[0]!;
        problems.push({ ...locate(document, ['variants', name]), path: 'variants', message: `name: ${message}` });
        continue;
      }
      const strangers = strangeNames(design, change);
      if (strangers.length > 0) {
        const place = locate(document, ['variants', name]);
        for (const stranger of strangers) problems.push({ ...place, path: `variants.${name}`, message: stranger });
        continue;
      }
      const checked = check(variantOf(design, change, document), document, ['variants', name], problems, base);
      if (checked) variants.set(name, checked.site);
    }
  }
  if (problems.length > 0 || !base) throw new SiteError(file, problems);
  return { file, base: base.site, variants, document };
}

/** The keys of the file that describe the base design, as written, with the appliances of its tables. */
export function writtenDesign({ content, lists }: SiteDocument): Record<string, unknown> {
  const design = Object.entries(content).filter(([key]) => !aroundDesign.includes(key));
  return withAppliances({ ...Object.fromEntries(design), ...costsWithin(content) }, lists);
}

/** The part of `costs` that belongs to the design; the rest of the section stands around all designs. */
function costsWithin({ costs }: Record<string, unknown>): { costs?: Record<string, unknown> } {
  if (typeof costs !== 'object' || costs === null) return {};
  const kept = Object.entries(costs).filter(([key]) => (costsOfDesign as readonly string[]).includes(key));
  return kept.length > 0 ? { costs: Object.fromEntries(kept) } : {};
}

/**
 * The design of one variant, or the base when no name is given.
 *
 * @throws SiteError when the site file has no variant of that name
 */
export function designOf(site: SiteFile, name: string | undefined): Site {
  if (name === undefined) return site.base;
  const design = site.variants.get(name);
  if (design) return design;
  const names = [...site.variants.keys()];
  const hint = names.length > 0 ? `${nearestHint(name, names) || ';'} It has ${names.join(', ')}` : '';
  throw new SiteError(site.file, [
    { line: 0, column: 0, path: 'variants', message: `no variant is called "${shortened(name)}"${hint}` },
  ]);
}

/** What shows that an item of a list is a new one, whole, and not a change of one that is there. */
const markOfWhole: Readonly<Record<string, string>> = { arrays: 'module', loads: 'power' };

/** Names in a variant's lists that the base does not have, with the nearest that it has. */
function strangeNames(design: Record<string, unknown>, change: unknown): string[] {
  return Object.entries(markOfWhole).flatMap(([key, mark]) => {
    const named = (list: unknown) =>
      (Array.isArray(list) ? list : []).filter(
        (item): item is Record<string, unknown> => typeof item?.name === 'string',
      );
    const known = named(design[key]).map(({ name }) => String(name));
    return named((change as Record<string, unknown> | null)?.[key])
      .filter((item) => !known.includes(String(item.name)) && !(mark in item))
      .map(({ name }) => {
        const has = known.length > 0 ? `; it has ${known.join(', ')}` : '';
        const hint = nearestHint(String(name), known) || has;
        return `${key} has no item called "${shortened(String(name))}"${hint} (a new one needs all its keys)`;
      });
  });
}

/** The design that a variant's changes make of the base, with the appliances of its own tables. */
export function variantOf(design: Record<string, unknown>, change: unknown, { lists }: SiteDocument): WrittenDesign {
  return withAppliances(mergeVariant(design, change) as WrittenDesign, lists);
}

/** Keys to a value as the file counts its loads, where a table among them counts as one. */
function asWritten([section, index, ...inner]: PropertyKey[], { content, lists }: SiteDocument): PropertyKey[] {
  if (section !== 'loads' || typeof index !== 'number')
    return [section, index, ...inner].filter((key) => key !== undefined);
  return [section, itemsOfLoads(content.loads, lists)[index] ?? index, ...inner];
}

interface CheckedDesign extends KnownDesign {
  site: Site;
}

/**
 * Checks one design; what is wrong in the base is not said again for each variant that inherits it.
 *
 * @param base of a variant, where it is right
 */
function check(
  written: WrittenDesign,
  document: SiteDocument,
  within: string[],
  problems: SiteProblem[],
  base: CheckedDesign | null,
): CheckedDesign | null {
  const { design, problems: unnamed, named } = withModules(written, document.lists);
  if (unnamed.length > 0) {
    for (const { path, message } of unnamed) {
      const place = locate(document, [...within, ...path]);
      const keys = pathText([...within, ...path]);
      if (!problems.some((told) => told.message === message)) problems.push({ ...place, path: keys, message });
    }
    return null;
  }
  const changed = base && changedValues(design, base);
  // Code written for the schema anew takes longer to make than it saves on a few designs.
  const result = changed ? { success: true as const, data: changed } : siteSchema.safeParse(design, { jitless: true });
  if (result.success) {
    const { file, places } = document;
    const site = fromOrigin(result.data, { file, within: pathText(within), places, unsaid: unsaidIn(design) });
    return { site, written: design, values: result.data };
  }
  const alreadySaid = new Set(within.length > 0 ? problems.map(({ path, message }) => `${path} ${message}`) : []);
  for (const { path, at, message } of valueProblems(result.error)) {
    const inTable = placeInTable(path, design, document.lists, named);
    if (alreadySaid.has(`${inTable?.path ?? pathText(path)} ${message}`)) continue;
    const place = inTable ?? {
      ...locate(document, [...within, ...at]),
      path: pathText([...within, ...asWritten(path, document)]),
    };
    problems.push({ ...place, message });
  }
  return null;
}
