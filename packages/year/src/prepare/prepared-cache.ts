/**
 * Results of stages that do not change between designs, by the values they were made from.
 * Keeps the latest `most` of each cache's results, so that a sweep over any number of designs stays in bounded memory.
 */
export class StageCache {
  readonly #results = new Map<string, unknown>();
  readonly #most: number;

  constructor(most = 48) {
    this.#most = most;
  }

  /** The result kept for `inputs`, or the one `make` gives; `stage` keeps different stages apart. */
  get<Result>(stage: string, inputs: unknown, make: () => Result): Result {
    const key = `${stage} ${JSON.stringify(inputs)}`;
    if (this.#results.has(key)) {
      const kept = this.#results.get(key) as Result;
      this.#results.delete(key);
      this.#results.set(key, kept);
      return kept;
    }
    const made = make();
    this.#results.set(key, made);
    if (this.#results.size > this.#most) this.#results.delete(this.#results.keys().next().value!);
    return made;
  }
}
