import { type Document, isCollection, isNode, isPair, LineCounter, parseDocument } from 'yaml';
import { SiteError } from './site-problem.js';

type Keys = readonly PropertyKey[];

/** A parsed YAML file that still knows where each value stands. */
export interface SiteDocument {
  file: string;
  /** The file's content as plain objects, lists, strings and numbers. */
  content: Record<string, unknown>;
  /** Line and column of the value that the keys lead to, or of its nearest surroundings that exist. */
  locate(keys: Keys): { line: number; column: number };
}

/** One slip often upsets everything after it: the first few say enough. */
const mostYamlErrors = 5;

/**
 * Parses the text of a site file.
 *
 * @throws SiteError when it is not YAML, or not a mapping of keys to values
 */
export function readDocument(text: string, file: string): SiteDocument {
  if (/^LOCATION\s*,|^[^\n]*\n"?Date \(MM\/DD\/YYYY\)|\0/.test(text)) {
    const message = 'found a weather file or data, expected a site file in YAML; name the weather there under weather:';
    throw new SiteError(file, [{ line: 1, column: 1, path: '', message }]);
  }
  const lines = new LineCounter();
  // What is odd but legal is told by the schema, with its place; the parser is not to warn beside it.
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, logLevel: 'error' });
  if (document.errors.length > 0) {
    throw new SiteError(
      file,
      document.errors.slice(0, mostYamlErrors).map((error) => {
        const { line, col } = lines.linePos(error.pos[0]);
        return { line, column: col, path: '', message: `not readable as YAML: ${error.message.slice(0, 200)}` };
      }),
    );
  }
  let content: unknown;
  try {
    content = document.toJS({ maxAliasCount: 100 });
  } catch (error) {
    // An alias that names no anchor, or far too many of them.
    const message = `not readable as YAML: ${(error as Error).message}`;
    throw new SiteError(file, [{ line: 1, column: 1, path: '', message }]);
  }
  if (typeof content !== 'object' || content === null || Array.isArray(content)) {
    const found =
      content === null ? 'an empty file' : Array.isArray(content) ? 'a list' : `"${String(content).slice(0, 60)}"`;
    throw new SiteError(file, [
      {
        line: 1,
        column: 1,
        path: '',
        message: `found ${found}, expected keys such as name:, place:, weather:, arrays:, bank:, loads: (see 'wintergap start')`,
      },
    ]);
  }
  return { file, content: content as Record<string, unknown>, locate: (keys) => locate(document, lines, keys) };
}

function locate(document: Document, lines: LineCounter, keys: Keys): { line: number; column: number } {
  for (let length = keys.length; length > 0; length--) {
    const offset = keyOffset(document, keys.slice(0, length));
    if (offset !== null) {
      const { line, col } = lines.linePos(offset);
      return { line, column: col };
    }
  }
  return { line: 1, column: 1 };
}

/** Where the key (in a mapping) or the item (in a list) begins, as an offset into the text. */
function keyOffset(document: Document, keys: Keys): number | null {
  const parent = keys.length === 1 ? document.contents : document.getIn(keys.slice(0, -1), true);
  const last = keys[keys.length - 1];
  if (!isCollection(parent)) return null;
  for (const item of parent.items) {
    if (isPair(item) && isNode(item.key) && String(item.key) === String(last)) return item.key.range?.[0] ?? null;
  }
  const item = typeof last === 'number' ? parent.items[last] : undefined;
  return isNode(item) ? (item.range?.[0] ?? null) : null;
}
