/** A design in the search: what is known of it before it is simulated. */
export interface Candidate<Design> {
  design: Design;
  /** The measure can never come out below this; it is the measure itself when nothing has to be simulated for it. */
  atLeast: number;
  /** Decides between equal measures, first number first; smaller is better. */
  tieBreak: readonly number[];
}

/** A candidate that was simulated. */
export interface Tried<Outcome> {
  meets: boolean;
  /** What is to be smallest. Only used where the targets are met. */
  measure: number;
  outcome: Outcome;
}

export interface SearchResult<Outcome> {
  /** `null` when no candidate meets the targets; every one has then been tried. */
  best: Outcome | null;
  /** Everything tried, in the order of trying. */
  tried: Tried<Outcome>[];
}

/**
 * The candidate with the smallest measure that meets the targets, ties broken by `tieBreak` and then by the order given.
 *
 * Exhaustive, with one shortcut that cannot miss: candidates are tried in the order of their lower bounds, and the
 * search ends when the next bound is no better than the best found. What is left untried cannot be smaller. Nothing is
 * assumed about how a larger array or bank changes the targets, since a larger bank can make an engine run longer.
 *
 * @param tryOut gives `null` for a design that must not be built; it is passed over
 */
export function searchSmallest<Design, Outcome>(
  candidates: readonly Candidate<Design>[],
  tryOut: (design: Design) => Tried<Outcome> | null,
  onTried?: (tried: number) => void,
): SearchResult<Outcome> {
  const order = candidates.map((candidate, i) => ({ candidate, i }));
  order.sort((a, b) => compareRanks(rank(a.candidate.atLeast, a), rank(b.candidate.atLeast, b)));
  const tried: Tried<Outcome>[] = [];
  let best: { rank: number[]; outcome: Outcome } | null = null;
  for (const entry of order) {
    // With its bound as its measure this candidate would rank here at best, and all later ones behind it.
    if (best !== null && compareRanks(rank(entry.candidate.atLeast, entry), best.rank) > 0) break;
    const result = tryOut(entry.candidate.design);
    if (result === null) continue;
    tried.push(result);
    onTried?.(tried.length);
    if (!result.meets) continue;
    const own = rank(result.measure, entry);
    if (best === null || compareRanks(own, best.rank) < 0) best = { rank: own, outcome: result.outcome };
  }
  return { best: best?.outcome ?? null, tried };
}

/** Measure, tie breaks, place in the list: no two candidates are equal. */
const rank = (measure: number, { candidate, i }: { candidate: Candidate<unknown>; i: number }): number[] => [
  measure,
  ...candidate.tieBreak,
  i,
];

function compareRanks(a: readonly number[], b: readonly number[]): number {
  for (let k = 0; k < a.length; k++) if (a[k] !== b[k]) return a[k]! - b[k]!;
  return 0;
}
