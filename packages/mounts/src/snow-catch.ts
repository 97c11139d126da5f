import { mustLie } from '@wintergap/ground';

/** Which tilts a snowfall covers, from a site's own experience. */
export interface SnowCatch {
  /** Up to this tilt a fall covers a plane whole, degrees from horizontal. */
  wholeUpToDeg: number;
  /** From this tilt on a fall leaves a plane bare, degrees; `null` where even an upright plane is covered whole. */
  bareFromDeg: number | null;
}

/**
 * Dry snow begins to run off glass near 40 degrees while it falls and hardly stays on upright planes: common practice, no
 * source. The two tilts are chosen so that the losses of a winter fall with tilt as cos2(tilt), which Townsend & Powers
 * (2011), 37th IEEE PVSC, 3231-3236, found.
 */
export const usualCatch: SnowCatch = { wholeUpToDeg: 35, bareFromDeg: 85 };

/** Wet snow and rime, which stick at any tilt and come off by Marion's sliding alone. Common practice, no source. */
export const fullCatch: SnowCatch = { wholeUpToDeg: 90, bareFromDeg: null };

/** Share of the slant height that a fall covers, 0 to 1: in proportion to the tilt between whole and bare. */
export function caughtShare(tiltDeg: number, { wholeUpToDeg, bareFromDeg }: SnowCatch): number {
  if (bareFromDeg === null || tiltDeg <= wholeUpToDeg) return 1;
  return Math.max(0, (bareFromDeg - tiltDeg) / (bareFromDeg - wholeUpToDeg));
}

/** @throws OutOfRangeError unless the plane gets barer with tilt */
export function checkCatch({ wholeUpToDeg, bareFromDeg }: SnowCatch): void {
  mustLie('wholeUpToDeg', wholeUpToDeg, 0, 90);
  if (bareFromDeg !== null) mustLie('bareFromDeg', bareFromDeg, wholeUpToDeg, 90);
}
