import { OutOfRangeError } from '@wintergap/ground';

/** High 32 bits of the 64-bit product of two unsigned 32-bit numbers. */
function highProduct(a: number, b: number): number {
  const aLow = a & 0xffff;
  const aHigh = a >>> 16;
  const bLow = b & 0xffff;
  const bHigh = b >>> 16;
  const middle = aHigh * bLow + ((aLow * bLow) >>> 16);
  const carry = (middle & 0xffff) + aLow * bHigh;
  return (aHigh * bHigh + Math.floor(middle / 65536) + Math.floor(carry / 65536)) >>> 0;
}

/**
 * Philox 4x32 with ten rounds: turns a counter of four words and a key of two into four random words.
 * Only 32-bit integer arithmetic, so the words are the same on every machine.
 *
 * Source: Salmon, Moraes, Dror & Shaw (2011), Parallel random numbers: as easy as 1, 2, 3, SC11; public algorithm.
 */
export function philox(counter: Uint32Array, key: readonly [number, number], out: Uint32Array): void {
  let [c0, c1, c2, c3] = [counter[0]!, counter[1]!, counter[2]!, counter[3]!];
  let [k0, k1] = key;
  for (let round = 0; round < 10; round++) {
    const high0 = highProduct(0xd2511f53, c0);
    const low0 = Math.imul(0xd2511f53, c0);
    const high1 = highProduct(0xcd9e8d57, c2);
    const low1 = Math.imul(0xcd9e8d57, c2);
    c0 = (high1 ^ c1 ^ k0) >>> 0;
    c1 = low1 >>> 0;
    c2 = (high0 ^ c3 ^ k1) >>> 0;
    c3 = low0 >>> 0;
    k0 = (k0 + 0x9e3779b9) >>> 0;
    k1 = (k1 + 0xbb67ae85) >>> 0;
  }
  out[0] = c0;
  out[1] = c1;
  out[2] = c2;
  out[3] = c3;
}

/**
 * A repeatable stream of random numbers. The seed and up to three stream numbers fix every number that follows,
 * and streams that differ in any of them are independent: year 7 is the same year whether it is made first, last or
 * on another worker.
 */
export class RandomStream {
  private readonly key: readonly [number, number];
  private readonly counter: Uint32Array;
  private readonly words = new Uint32Array(4);
  private used = 4;
  private spare = Number.NaN;

  /** @param seed a whole number from 0 to 2^53 - 1 */
  constructor(seed: number, streamA = 0, streamB = 0, streamC = 0) {
    checkSeed(seed);
    this.key = [seed >>> 0, Math.floor(seed / 4294967296) >>> 0];
    this.counter = Uint32Array.of(0, streamA, streamB, streamC);
  }

  /** Evenly spread over 0 (may occur) to 1 (may not), in steps of 2^-32. */
  uniform(): number {
    if (this.used === 4) {
      philox(this.counter, this.key, this.words);
      this.counter[0]!++;
      this.used = 0;
    }
    return this.words[this.used++]! / 4294967296;
  }

  /** A whole number from 0 to `count` - 1. */
  below(count: number): number {
    return Math.floor(this.uniform() * count);
  }

  /** Normally distributed, mean 0 and variance 1, by the polar method of Marsaglia & Bray (1964). */
  normal(): number {
    if (!Number.isNaN(this.spare)) {
      const ready = this.spare;
      this.spare = Number.NaN;
      return ready;
    }
    for (;;) {
      const x = 2 * this.uniform() - 1;
      const y = 2 * this.uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      this.spare = y * scale;
      return x * scale;
    }
  }
}

/** @throws OutOfRangeError unless the seed is a whole number from 0 to 2^53 - 1 */
export function checkSeed(seed: number): void {
  if (!Number.isSafeInteger(seed) || seed < 0) {
    throw new OutOfRangeError(`seed must be a whole number from 0 to ${Number.MAX_SAFE_INTEGER}, got ${seed}`);
  }
}
