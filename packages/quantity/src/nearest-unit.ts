import { distance } from 'fastest-levenshtein';
import { type Dimension, dimensions } from './dimension.js';
import { pricedBy } from './priced-by.js';
import { unitFactors } from './unit-factors.js';

/** Units that a misspelled one may have meant, all equally near and all of one kind of quantity. */
export interface NearUnits {
  dimension: Dimension;
  /** The spelling that is near, first of its kind: `volts` for `vlots`. */
  near: string;
  /** What to write instead: the unit by its usual spelling, `V`, or the same one with the right capitals. */
  write: string[];
}

/**
 * The units whose spelling is nearest to an unknown one. Those of the wanted kind go before others that are as near;
 * with capitals alone amiss there is no doubt of the kind. `null` where none is near: a number says nothing without
 * its unit, and a far-fetched one leads astray.
 */
export function nearestUnits(unit: string, wanted: Dimension): NearUnits | null {
  const others = (Object.keys(dimensions) as Dimension[]).filter((dimension) => dimension !== wanted);
  let nearest: NearUnits | null = null;
  let least = mostSlips(unit);
  let units = new Set<string>();
  for (const dimension of [wanted, ...others]) {
    for (const [spelling, usual] of spellings(dimension)) {
      const slips = slipsBetween(unit, spelling);
      if (slips > least || (slips === least && nearest !== null && nearest.dimension !== dimension)) continue;
      if (slips < least || nearest === null) {
        nearest = { dimension, near: spelling, write: [] };
        units = new Set();
      }
      least = slips;
      if (!units.has(usual)) nearest.write.push(slips < 1 ? spelling : usual);
      units.add(usual);
    }
  }
  return nearest;
}

/** A misspelled unit has one letter too many, too few or in the wrong place; a long one may have more. */
const mostSlips = (unit: string): number => Math.max(1, Math.floor(unit.length / 4));

/** How many slips make one spelling of another: two letters that changed places are one. Capitals are less than one. */
function slipsBetween(written: string, spelling: string): number {
  if (written === spelling) return 0;
  const [a, b] = [written.toLowerCase(), spelling.toLowerCase()];
  if (a === b) return 0.1;
  if (swapped(a, b)) return 1;
  // A wrong letter in a short symbol makes another unit of it: kWh and kAh.
  if (Math.max(a.length, b.length) < 4 && (a.length === b.length || Math.min(a.length, b.length) < 2)) return Infinity;
  return distance(a, b);
}

function swapped(a: string, b: string): boolean {
  if (a.length !== b.length) return false;
  const at = [...a].findIndex((letter, i) => letter !== b[i]);
  return a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
}

/** What may be written of a kind, and the usual spelling of the same unit. */
function spellings(dimension: Dimension): [string, string][] {
  if (dimension === 'temperature') return temperatures;
  const priced = pricedBy[dimension];
  if (priced) return spellings(priced[0]).map(([spelling, usual]) => [`/${spelling}`, `/${usual}`]);
  const usual = new Map<number, string>();
  const listed = [...unitFactors(dimension)].map(([spelling, factor]): [string, string] => {
    if (!usual.has(factor)) usual.set(factor, spelling);
    return [spelling, usual.get(factor)!];
  });
  return dimension === 'conductorArea' ? [...listed, ['AWG', 'AWG']] : listed;
}

const temperatures: [string, string][] = [
  ['degC', 'degC'],
  ['degF', 'degF'],
  ['celsius', 'degC'],
  ['fahrenheit', 'degF'],
  ['C', 'degC'],
  ['F', 'degF'],
  ['K', 'K'],
];
