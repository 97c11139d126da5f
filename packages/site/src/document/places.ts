import { type Document, isCollection, isNode, isPair, type LineCounter } from 'yaml';
import { pathText } from './site-problem.js';

/** 1-based line and column in the site file. */
export interface Place {
  line: number;
  column: number;
}

/** Where each value of a site file stands, by its path of keys such as `arrays[0].module.vmp`. */
export type Places = ReadonlyMap<string, Place>;

/** The places of all values: of a key in a mapping where the key begins, of an item of a list where the item does. */
export function placesIn(document: Document, lines: LineCounter): Places {
  const places = new Map<string, Place>();
  const note = (keys: readonly PropertyKey[], offset: number | undefined) => {
    if (offset === undefined) return;
    const { line, col } = lines.linePos(offset);
    places.set(pathText(keys), { line, column: col });
  };
  const visit = (node: unknown, keys: readonly PropertyKey[]) => {
    if (!isCollection(node)) return;
    node.items.forEach((item, i) => {
      if (isPair(item) && isNode(item.key)) {
        const inner = [...keys, String(item.key)];
        note(inner, item.key.range?.[0]);
        visit(item.value, inner);
      } else if (isNode(item)) {
        const inner = [...keys, i];
        note(inner, item.range?.[0]);
        visit(item, inner);
      }
    });
  };
  visit(document.contents, []);
  return places;
}

/**
 * The place of the value at a path, or of its nearest surroundings that exist.
 *
 * @param above surroundings that are too wide to count
 */
export function nearestPlace(places: Places, path: string, above = ''): Place | null {
  for (let at = path; at !== above && at !== ''; at = surroundings(at)) {
    const place = places.get(at);
    if (place) return place;
  }
  return null;
}

const surroundings = (path: string): string => path.slice(0, Math.max(path.lastIndexOf('.'), path.lastIndexOf('['), 0));
