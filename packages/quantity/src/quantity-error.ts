import type { Dimension } from './dimension.js';

/** A quantity that could not be read: what stood there, what is needed, and how it may be written. */
export class QuantityError extends Error {
  override readonly name = 'QuantityError';
  /** The text or number as found. */
  readonly found: string;
  readonly dimension: Dimension;
  /** What was expected, such as `a length`. */
  readonly expected: string;
  /** Two or three spellings that would be read. */
  readonly examples: readonly string[];

  constructor(message: string, found: string, dimension: Dimension, expected: string, examples: readonly string[]) {
    super(message);
    this.found = found;
    this.dimension = dimension;
    this.expected = expected;
    this.examples = examples;
  }
}
