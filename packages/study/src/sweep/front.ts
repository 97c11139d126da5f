import { matters } from '../common/merit.js';
import type { RunRow } from './row.js';

/** A design that none is better than in size, engine hours and dark load at once, and those that come to the same. */
export interface FrontDesign {
  row: RunRow;
  /** Designs of the front that cost no less than this one and save nothing that matters; in the order of their numbers. */
  ties: readonly RunRow[];
}

/** What is small on the front: cost where there are prices, otherwise kW and kWh; then engine hours and dark kWh. */
interface Place {
  row: RunRow;
  size: readonly number[];
  hours: number;
  darkKWh: number;
  /** All of them, in that order. */
  figures: readonly number[];
}

/**
 * Goes along with a sweep, row by row, and keeps the designs that no other is better than in everything: the front of size,
 * or cost, against engine hours, with the dark load beside so that darkness does not pass for saving. Hours are means over
 * common years where the rows have them.
 */
export class DesignFront {
  #places: Place[] = [];

  /** Keeps a design unless one that is kept is no worse in anything and better in something; drops those it so beats. */
  add(row: RunRow): void {
    const { results } = row;
    const size = results.cost === undefined ? [results.ratedKW, results.bankKWh] : [results.cost];
    const hours = results.generatorHoursMean ?? results.generatorHours;
    const darkKWh = results.darkKWhMean ?? results.darkKWh;
    const place: Place = { row, size, hours, darkKWh, figures: [...size, hours, darkKWh] };
    if (this.#places.some((other) => dominates(other, place))) return;
    this.#places = [...this.#places.filter((other) => !dominates(place, other)), place];
  }

  /** The front from the smallest design on. */
  designs(): FrontDesign[] {
    const kept: { place: Place; ties: Place[] }[] = [];
    for (const place of this.#places.toSorted(smallestFirst)) {
      const like = kept.find(({ place: smaller }) => savesNothing(place, smaller));
      if (like) like.ties.push(place);
      else kept.push({ place, ties: [] });
    }
    return kept.map(({ place, ties }) => ({
      row: place.row,
      ties: ties.map(({ row }) => row).sort((a, b) => a.number - b.number),
    }));
  }
}

/** No worse in anything, and better in something. Asked of every design and every place of the front: a plain loop. */
function dominates({ figures: one }: Place, { figures: other }: Place): boolean {
  let isBetter = false;
  for (let i = 0; i < one.length; i++) {
    if (!(one[i]! <= other[i]!)) return false;
    if (one[i]! < other[i]!) isBetter = true;
  }
  return isBetter;
}

/** Whether a design is no smaller than another, and no better by more than matters. */
const savesNothing = (place: Place, smaller: Place): boolean =>
  smaller.size.every((value, i) => value <= place.size[i]!) &&
  !matters(smaller.hours - place.hours, smaller.hours, 'generatorHours') &&
  !matters(smaller.darkKWh - place.darkKWh, smaller.darkKWh, 'darkKWh');

function smallestFirst(a: Place, b: Place): number {
  const [one, other] = [a.figures, b.figures];
  const i = one.findIndex((value, k) => value !== other[k]);
  return i < 0 ? a.row.number - b.row.number : one[i]! - other[i]!;
}
