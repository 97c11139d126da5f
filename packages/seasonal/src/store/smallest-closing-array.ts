import { mustLie } from '@wintergap/ground';
import type { StoreTechnology } from './seasonal-store.js';
import { type StoreSize, sizeStore } from './size-store.js';

/** Hourly surplus and demand of the design with its array made larger or smaller, Wh on the DC bus. */
export type ScaledYear = (scale: number) => { surplusWh: ArrayLike<number>; demandWh: ArrayLike<number> };

/** The smallest array with which a seasonal store retires the engine, as a multiple of the base design's array. */
export type ClosingArray =
  | {
      closes: true;
      scale: number;
      /** With the allowance for what is not known of the store. */
      scaleWithAllowance: number;
      /** The store that goes with `scale`. */
      size: Extract<StoreSize, { closes: true }>;
      /** False when that array needs neither engine nor store. */
      needsStore: boolean;
      yearsSimulated: number;
    }
  | { closes: false; largestTried: number; size: Extract<StoreSize, { closes: false }>; yearsSimulated: number };

/**
 * Share added to the array for the unknown losses of a seasonal store. Common practice, no source.
 */
const closingArrayAllowance = 0.2;

/** Smallest array ever tried, as a share of the base design's. */
const smallestTried = 1 / 16;

// After the bracket a factor of two wide, seven halvings find the scale to 1 %.
const bisectionSteps = 7;

/**
 * Finds the smallest array whose surplus covers the year, by doubling or halving from the base design until it is
 * bracketed and then bisecting, to about 1 %. At most 12 years are simulated for a largest scale of 16.
 *
 * @param scaleToYear simulates the year again with the array scaled; its cost is the caller's
 * @param unmetAllowed share of the demand that may stay unmet, 0 to 1
 * @param largestScale where to give up, 1 to 1000
 */
export function smallestClosingArray(
  scaleToYear: ScaledYear,
  technology: StoreTechnology,
  unmetAllowed: number,
  largestScale: number,
): ClosingArray {
  mustLie('largestScale', largestScale, 1, 1000);
  let yearsSimulated = 0;
  const sizeAt = (scale: number): StoreSize => {
    yearsSimulated++;
    const { surplusWh, demandWh } = scaleToYear(scale);
    return sizeStore(surplusWh, demandWh, technology, unmetAllowed);
  };

  let high = 1;
  let low = 0;
  let size = sizeAt(high);
  if (size.closes) {
    for (low = high / 2; low >= smallestTried; low /= 2) {
      const smaller = sizeAt(low);
      if (!smaller.closes) break;
      high = low;
      size = smaller;
    }
  } else {
    while (!size.closes) {
      if (high >= largestScale) return { closes: false, largestTried: high, size, yearsSimulated };
      low = high;
      high = Math.min(2 * high, largestScale);
      size = sizeAt(high);
    }
  }
  for (let step = 0; step < bisectionSteps && low >= smallestTried; step++) {
    const middle = (low + high) / 2;
    const tried = sizeAt(middle);
    if (tried.closes) {
      high = middle;
      size = tried;
    } else {
      low = middle;
    }
  }
  const needsStore = size.store.store.capacityWh > 0;
  const scaleWithAllowance = high * (1 + closingArrayAllowance);
  return { closes: true, scale: high, scaleWithAllowance, size, needsStore, yearsSimulated };
}
