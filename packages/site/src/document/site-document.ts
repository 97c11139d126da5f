import { dirname } from 'node:path';
import { LineCounter, parseDocument } from 'yaml';
import { itemsOfLoads, type PartLists, placesWithAppliances, readPartLists } from './part-lists.js';
import { nearestPlace, type Place, type Places, placesIn } from './places.js';
import { shapeProblems, tooDeep } from './shape.js';
import { pathText, SiteError, type SiteProblem } from './site-problem.js';

/** A parsed YAML file that still knows where each value stands. */
export interface SiteDocument {
  file: string;
  /** The file's content as plain objects, lists, strings and numbers. */
  content: Record<string, unknown>;
  /** Where each of its values stands. */
  places: Places;
  /** The tables of parts that it names. */
  lists: PartLists;
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
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'error',
  });
  if (document.errors.length > 0) {
    throw new SiteError(
      file,
      document.errors.slice(0, mostYamlErrors).map((error) => {
        const { line, col } = lines.linePos(error.pos[0]);
        const message = /call stack/.test(error.message)
          ? tooDeep
          : `not readable as YAML: ${error.message.slice(0, 200)}`;
        return { line, column: col, path: '', message };
      }),
    );
  }
  const misshapen = shapeProblems(document, lines);
  if (misshapen.length > 0) throw new SiteError(file, misshapen);
  let content: unknown;
  try {
    content = document.toJS({ maxAliasCount: 100 });
  } catch (error) {
    // An alias that names no anchor, or far too many of them.
    const message = `not readable as YAML: ${(error as Error).message.slice(0, 200)}`;
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
  const inTables: SiteProblem[] = [];
  const lists = readPartLists(content as Record<string, unknown>, dirname(file), inTables);
  if (inTables.length > 0) throw new SiteError(file, inTables);
  const { loads } = content as Record<string, unknown>;
  const places = placesWithAppliances(placesIn(document, lines), itemsOfLoads(loads, lists));
  return { file, content: content as Record<string, unknown>, places, lists };
}

/**
 * Line and column of the value that the keys lead to, or of its nearest surroundings that exist; 0 in a document that was
 * never a text.
 */
export const locate = ({ places }: SiteDocument, keys: readonly PropertyKey[]): Place =>
  nearestPlace(places, pathText(keys)) ?? (places.size > 0 ? { line: 1, column: 1 } : { line: 0, column: 0 });
