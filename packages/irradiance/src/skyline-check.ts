import { mustBeAbove, mustLie, OutOfRangeError } from '@wintergap/ground';
import type { LeafSeason, Obstacle } from './obstacle.js';

export function checkObstacle({ fromDeg, toDeg, topM, distanceM, clear }: Obstacle): void {
  mustLie('fromDeg of an obstacle', fromDeg, 0, 360);
  mustLie('toDeg of an obstacle', toDeg, 0, 360);
  if (toDeg === fromDeg || toDeg === fromDeg - 360) {
    throw new OutOfRangeError(`an obstacle must have some width, got ${fromDeg} to ${toDeg}; all round is 0 to 360`);
  }
  mustLie('topM of an obstacle', topM, 0, 10_000);
  mustBeAbove('distanceM of an obstacle', distanceM, 0);
  if (clear) {
    mustLie('clear.leafOn of an obstacle', clear.leafOn, 0, 1);
    mustLie('clear.leafOff of an obstacle', clear.leafOff, 0, 1);
  }
}

export function checkLeaves({ onDay, offDay }: LeafSeason): void {
  mustLie('onDay of the leaves', onDay, 0, 364);
  mustLie('offDay of the leaves', offDay, 0, 364);
}
