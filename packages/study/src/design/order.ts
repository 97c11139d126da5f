import { OutOfRangeError } from '@wintergap/ground';
import { RandomStream } from '@wintergap/weather';

/** Which designs of a grid are run, in which order: all of them, or a seeded sample. */
export interface DesignOrder {
  /** Designs in the full grid, up to 2^53 - 1. */
  gridSize: number;
  sample: { count: number; seed: number } | null;
}

/** A contiguous share of a sweep, counted from 1: part 3 of 16. */
export interface SweepPart {
  index: number;
  of: number;
}

/** Positions in the order of a sweep, counted from 0; `to` is not among them. */
export interface Positions {
  from: number;
  to: number;
}

/** All designs of a sweep, on one machine. */
export const wholeSweep: SweepPart = { index: 1, of: 1 };

/** Designs that are run. */
export const designCount = ({ gridSize, sample }: DesignOrder): number => sample?.count ?? gridSize;

/**
 * Number of the design at a position; numbers count from 1 through the full grid and rise with the position.
 *
 * A sample takes one design, drawn evenly, from each of `count` equal stretches of the grid: no design comes twice,
 * every region of the grid is visited, and any position is known without going through those before it.
 */
export function numberAt({ gridSize, sample }: DesignOrder, position: number): number {
  if (sample === null) return position + 1;
  const from = stretchStart(gridSize, position, sample.count);
  const width = stretchStart(gridSize, position + 1, sample.count) - from;
  const random = new RandomStream(sample.seed, position >>> 0, Math.floor(position / 2 ** 32));
  const share = random.uniform() + random.uniform() / 2 ** 32;
  return from + Math.min(Math.floor(share * width), width - 1) + 1;
}

/**
 * The positions of one part.
 *
 * @throws OutOfRangeError when there is no such part
 */
export function partPositions(count: number, { index, of }: SweepPart): Positions {
  if (!Number.isSafeInteger(of) || !Number.isSafeInteger(index) || index < 1 || index > of) {
    throw new OutOfRangeError(`part must be from 1/N to N/N, got ${index}/${of}`);
  }
  return { from: stretchStart(count, index - 1, of), to: stretchStart(count, index, of) };
}

/** Where stretch `k` begins when `total` is divided into `of` stretches as equal as whole numbers allow. */
const stretchStart = (total: number, k: number, of: number): number => Number((BigInt(total) * BigInt(k)) / BigInt(of));
