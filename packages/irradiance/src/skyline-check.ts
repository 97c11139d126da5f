import type { LeafSeason, Obstacle } from './skyline.js';

const within = (name: string, value: number, low: number, high: number): void => {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low} to ${high}, got ${value}`);
};

export function checkObstacle({ fromDeg, toDeg, topM, distanceM, clear }: Obstacle): void {
  within('fromDeg of an obstacle', fromDeg, 0, 360);
  within('toDeg of an obstacle', toDeg, 0, 360);
  if (toDeg === fromDeg || toDeg === fromDeg - 360) {
    throw new RangeError(`an obstacle must have some width, got ${fromDeg} to ${toDeg}; all round is 0 to 360`);
  }
  within('topM of an obstacle', topM, 0, 10_000);
  if (!(distanceM > 0 && distanceM < 1e6)) {
    throw new RangeError(`distanceM of an obstacle must be above 0, got ${distanceM}`);
  }
  if (clear) {
    within('clear.leafOn of an obstacle', clear.leafOn, 0, 1);
    within('clear.leafOff of an obstacle', clear.leafOff, 0, 1);
  }
}

export function checkLeaves({ onDay, offDay }: LeafSeason): void {
  within('onDay of the leaves', onDay, 0, 364);
  within('offDay of the leaves', offDay, 0, 364);
}
