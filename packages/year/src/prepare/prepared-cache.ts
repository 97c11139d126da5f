/**
 * What is prepared for a year before its balance and does not change between designs, kept by what it was made from.
 * Keeps the latest `most` things of each kind, so that a sweep over any number of designs stays in bounded memory.
 */
export class PreparedCache {
  readonly #kept = new Map<string, Map<string, unknown>>();
  readonly #most: number;
  readonly #lasting: PreparedCache;

  /** @param lasting keeps what hangs on no weather year, in place of this one: for many years, each of which is run once */
  constructor(most = 32, lasting?: PreparedCache) {
    this.#most = most;
    this.#lasting = lasting ?? this;
  }

  /** As `get`, for what is the same under every weather year. */
  lasting<Thing>(what: string, inputs: readonly unknown[], make: () => Thing): Thing {
    return this.#lasting.get(what, inputs, make);
  }

  /**
   * The thing kept for these inputs, or the one that `make` gives.
   *
   * @param what the kind of thing
   * @param inputs all that `make` uses: plain values of the site file, and `identityOf` what was made before
   */
  get<Thing>(what: string, inputs: readonly unknown[], make: () => Thing): Thing {
    const kept = this.#keptOf(what);
    const key = JSON.stringify(inputs);
    const made = kept.has(key) ? (kept.get(key) as Thing) : make();
    // What was asked for last comes last, and what comes first goes when there are too many.
    kept.delete(key);
    kept.set(key, made);
    if (kept.size > this.#most) kept.delete(kept.keys().next().value!);
    return made;
  }

  #keptOf(what: string): Map<string, unknown> {
    const known = this.#kept.get(what);
    if (known) return known;
    const kept = new Map<string, unknown>();
    this.#kept.set(what, kept);
    return kept;
  }
}

const identities = new WeakMap<object, number>();
let identified = 0;

/**
 * A number that no other object of this thread has: stands in a key for what would be too long to write there. Two weather
 * years of one name are told apart by it, and so is a copy from its original.
 */
export function identityOf(made: object): number {
  const known = identities.get(made);
  if (known !== undefined) return known;
  identities.set(made, ++identified);
  return identified;
}
