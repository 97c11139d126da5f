/**
 * What is prepared for a year before its balance and does not change between designs, kept by what it was made from.
 * Keeps the latest `most` things, so that a sweep over any number of designs stays in bounded memory.
 */
export class PreparedCache {
  readonly #kept = new Map<string, unknown>();
  readonly #most: number;

  constructor(most = 48) {
    this.#most = most;
  }

  /**
   * The thing kept for these inputs, or the one that `make` gives.
   *
   * @param what tells things of different kinds apart
   * @param inputs all that `make` uses: plain values of the site file, and `identityOf` what was made before
   */
  get<Thing>(what: string, inputs: readonly unknown[], make: () => Thing): Thing {
    const key = `${what} ${JSON.stringify(inputs)}`;
    if (this.#kept.has(key)) {
      const kept = this.#kept.get(key) as Thing;
      this.#kept.delete(key);
      this.#kept.set(key, kept);
      return kept;
    }
    const made = make();
    this.#kept.set(key, made);
    if (this.#kept.size > this.#most) this.#kept.delete(this.#kept.keys().next().value!);
    return made;
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
