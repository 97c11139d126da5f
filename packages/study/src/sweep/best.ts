import { DesignFront, type FrontDesign } from './front.js';
import type { ResultColumn, RunRow, SweepResults, SweepRow } from './row.js';

/** What a sweep's designs can be ranked by; the first figure decides, the next ones decide between equals. */
export const rankings = {
  generatorHours: ['generatorHours', 'darkKWh', 'fuelLitres'],
  fuelLitres: ['fuelLitres', 'darkKWh', 'generatorHours'],
  darkHours: ['darkHours', 'darkKWh', 'generatorHours', 'fuelLitres'],
} as const;

export type Ranking = keyof typeof rankings;

/** What the end of a sweep tells: how many designs there were, and the best few of them. */
export interface SweepSummary {
  designs: number;
  /** Designs that could not be run. */
  failed: number;
  /** Why the first of them could not. */
  firstError: string | null;
  /** Designs that exceed a limit: they are in the file, and never among the best. */
  overLimits: number;
  /** Which the first of them exceeds. */
  firstLimits: string | null;
  /** What less engine time costs at least; see `DesignFront`. */
  front: readonly FrontDesign[];
  /** Best first; equals in the order of their numbers. */
  best: Readonly<Record<Ranking, readonly RunRow[]>>;
}

/** Goes along with a sweep, row by row, and keeps only the best `keep` of each ranking. */
export class BestDesigns {
  #designs = 0;
  #failed = 0;
  #firstError: string | null = null;
  #overLimits = 0;
  #firstLimits: string | null = null;
  readonly #front: DesignFront = new DesignFront();
  readonly #best: Record<Ranking, RunRow[]> = { generatorHours: [], fuelLitres: [], darkHours: [] };

  /** How many of each ranking are kept. */
  readonly keep: number;

  constructor(keep = 5) {
    this.keep = keep;
  }

  /** Takes a row in; rows may come in any order. */
  add(row: SweepRow): void {
    this.#designs++;
    const { results } = row;
    if (results === null) {
      this.#failed++;
      this.#firstError ??= `design ${row.number}: ${row.error}`;
      return;
    }
    if (row.limits.length > 0) {
      this.#overLimits++;
      this.#firstLimits ??= `design ${row.number}: ${row.limits.join(', ')}`;
      return;
    }
    this.#front.add({ ...row, results });
    for (const ranking of Object.keys(rankings) as Ranking[]) this.#place({ ...row, results }, ranking);
  }

  #place(row: RunRow, ranking: Ranking): void {
    const best = this.#best[ranking];
    let at = best.length;
    while (at > 0 && isBetter(row.results, best[at - 1]!.results, rankings[ranking])) at--;
    if (at >= this.keep) return;
    best.splice(at, 0, row);
    if (best.length > this.keep) best.pop();
  }

  /** What the rows come to that were added. */
  summary(): SweepSummary {
    return {
      designs: this.#designs,
      failed: this.#failed,
      firstError: this.#firstError,
      overLimits: this.#overLimits,
      firstLimits: this.#firstLimits,
      front: this.#front.designs(),
      best: this.#best,
    };
  }
}

function isBetter(a: SweepResults, b: SweepResults, figures: readonly ResultColumn[]): boolean {
  for (const figure of figures) if (a[figure] !== b[figure]) return a[figure] < b[figure];
  return false;
}
