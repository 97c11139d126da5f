import type { LeafSeason } from './obstacle.js';

/** A skyline as one array sees it from its height. Make it with `compileSkyline`. */
export interface CompiledSkyline {
  readonly leaves: LeafSeason;
  /** One entry for each obstacle that rises above the array. */
  readonly fromDeg: Float64Array;
  readonly widthDeg: Float64Array;
  readonly topDeg: Float64Array;
  readonly clearLeafOn: Float64Array;
  readonly clearLeafOff: Float64Array;
  /** Elevation of the opaque horizon at each whole degree of azimuth, 0 to 360; 0 where none was given. */
  readonly horizonDeg: Float64Array;
  /** Highest elevation of anything within each degree of azimuth: above it the sky is free. */
  readonly highestDeg: Float64Array;
  readonly columns: SkyColumns;
  /** Hidden sky shares worked out so far, by orientation; -1 where not yet. */
  readonly skyGrid: Float64Array;
}

/**
 * The skyline cut into upright columns one degree wide. The layers of a column lie on each other from the
 * horizontal up; layers of column k have the indices from start[k] to start[k + 1].
 */
export interface SkyColumns {
  start: Int32Array;
  /** Upper edge of each layer, radians. */
  top: Float64Array;
  /** Of each upper edge, what `light` needs: the square of its sine, and the edge plus half the sine of twice the edge. */
  topSquare: Float64Array;
  topArc: Float64Array;
  /** Share of the light that a layer holds back, with and without leaves. */
  hiddenLeafOn: Float64Array;
  hiddenLeafOff: Float64Array;
}
