import { clockwiseDeg, mustLie, radiansPerDegree as rad } from '@wintergap/ground';
import type { CompiledSkyline } from './compiled-skyline.js';
import { type HorizonPoint, horizonByDegree, horizonElevationDeg } from './horizon.js';
import type { LeafSeason, Obstacle } from './obstacle.js';
import { emptySkyGrid, skyColumns } from './sky-columns.js';
import { checkLeaves, checkObstacle } from './skyline-check.js';

/** 15 May to 1 October in the northern hemisphere, 14 November to 2 April in the southern. Common practice, no source. */
export function usualLeaves(latitudeDeg: number): LeafSeason {
  return latitudeDeg < 0 ? { onDay: 317, offDay: 91 } : { onDay: 134, offDay: 273 };
}

/**
 * Prepares a skyline for an array at a given height. An obstacle rises to atan((top - array height) / distance); one
 * whose top is not above the array is not seen.
 *
 * @param arrayHeightM height of the middle of the array above the ground, m
 * @throws OutOfRangeError when an obstacle, a point of the horizon or a date makes no sense
 */
export function compileSkyline(
  obstacles: readonly Obstacle[],
  horizon: readonly HorizonPoint[] | undefined,
  arrayHeightM: number,
  leaves: LeafSeason = usualLeaves(45),
): CompiledSkyline {
  mustLie('arrayHeightM', arrayHeightM, -10_000, 10_000);
  obstacles.forEach(checkObstacle);
  checkLeaves(leaves);
  const seen = obstacles.filter(({ topM }) => topM > arrayHeightM);
  const parts = {
    fromDeg: Float64Array.from(seen, ({ fromDeg }) => fromDeg % 360),
    widthDeg: Float64Array.from(seen, ({ fromDeg, toDeg }) =>
      toDeg - fromDeg === 360 ? 360 : clockwiseDeg(fromDeg, toDeg),
    ),
    topDeg: Float64Array.from(seen, ({ topM, distanceM }) => Math.atan((topM - arrayHeightM) / distanceM) / rad),
    clearLeafOn: Float64Array.from(seen, ({ clear }) => clear?.leafOn ?? 0),
    clearLeafOff: Float64Array.from(seen, ({ clear }) => clear?.leafOff ?? 0),
    horizonDeg: horizonByDegree(horizon),
  };
  return {
    ...parts,
    leaves: { ...leaves },
    highestDeg: highestByDegree(parts),
    columns: skyColumns(parts),
    skyGrid: emptySkyGrid(),
  };
}

/** Whether the leaves are out on a day (0 to 364). */
export function leavesAreOn({ onDay, offDay }: LeafSeason, day: number): boolean {
  return onDay <= offDay ? day >= onDay && day < offDay : day >= onDay || day < offDay;
}

/**
 * Share of the light from a direction that passes the skyline, 0 to 1.
 *
 * @param azimuthDeg 0 to 360
 * @param elevationDeg above the horizontal, degrees
 */
export function clearShare(
  skyline: CompiledSkyline,
  azimuthDeg: number,
  elevationDeg: number,
  leafOn: boolean,
): number {
  if (elevationDeg >= skyline.highestDeg[Math.floor(azimuthDeg) % 360]!) return 1;
  if (elevationDeg < horizonElevationDeg(skyline.horizonDeg, azimuthDeg)) return 0;
  const clear = leafOn ? skyline.clearLeafOn : skyline.clearLeafOff;
  let share = 1;
  for (let i = 0; i < clear.length; i++) {
    if (elevationDeg < skyline.topDeg[i]! && clockwiseDeg(skyline.fromDeg[i]!, azimuthDeg) <= skyline.widthDeg[i]!) {
      share *= clear[i]!;
    }
  }
  return share;
}

function highestByDegree({
  fromDeg,
  widthDeg,
  topDeg,
  horizonDeg,
}: Pick<CompiledSkyline, 'fromDeg' | 'widthDeg' | 'topDeg' | 'horizonDeg'>): Float64Array {
  const highest = new Float64Array(360);
  for (let degree = 0; degree < 360; degree++) {
    let top = Math.max(horizonDeg[degree]!, horizonDeg[degree + 1]!);
    for (let i = 0; i < topDeg.length; i++) {
      const startsWithin = clockwiseDeg(degree, fromDeg[i]!) < 1;
      const covers = clockwiseDeg(fromDeg[i]!, degree) <= widthDeg[i]!;
      if (startsWithin || covers) top = Math.max(top, topDeg[i]!);
    }
    highest[degree] = top;
  }
  return highest;
}
