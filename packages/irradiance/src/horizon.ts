/** A point of a surveyed horizon; between points it runs straight, and round through north. */
export interface HorizonPoint {
  azimuthDeg: number;
  elevationDeg: number;
}

/** Elevation of the horizon at each whole degree of azimuth, 0 to 360, never below 0; all 0 without a horizon. */
export function horizonByDegree(horizon: readonly HorizonPoint[] | undefined): Float64Array {
  const byDegree = new Float64Array(361);
  if (!horizon || horizon.length === 0) return byDegree;
  for (const point of horizon) check(point);
  const points = horizon
    .map(({ azimuthDeg, elevationDeg }) => ({ azimuthDeg: azimuthDeg % 360, elevationDeg }))
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg);
  const last = points[points.length - 1]!;
  const round = [
    { azimuthDeg: last.azimuthDeg - 360, elevationDeg: last.elevationDeg },
    ...points,
    { azimuthDeg: points[0]!.azimuthDeg + 360, elevationDeg: points[0]!.elevationDeg },
  ];
  let next = 1;
  for (let degree = 0; degree <= 360; degree++) {
    while (round[next]!.azimuthDeg < degree) next++;
    const a = round[next - 1]!;
    const b = round[next]!;
    const step = b.azimuthDeg - a.azimuthDeg;
    const along = step > 0 ? (degree - a.azimuthDeg) / step : 1;
    byDegree[degree] = Math.max(0, a.elevationDeg + along * (b.elevationDeg - a.elevationDeg));
  }
  return byDegree;
}

/**
 * Elevation of the horizon in a direction, degrees.
 *
 * @param horizonDeg elevations at the whole degrees 0 to 360
 * @param azimuthDeg 0 to 360
 */
export function horizonElevationDeg(horizonDeg: Float64Array, azimuthDeg: number): number {
  const at = Math.min(359, Math.floor(azimuthDeg));
  return horizonDeg[at]! + (azimuthDeg - at) * (horizonDeg[at + 1]! - horizonDeg[at]!);
}

function check({ azimuthDeg, elevationDeg }: HorizonPoint): void {
  if (!(azimuthDeg >= 0 && azimuthDeg <= 360)) {
    throw new RangeError(`azimuthDeg of a horizon point must be 0 to 360, got ${azimuthDeg}`);
  }
  if (!(elevationDeg >= -90 && elevationDeg <= 90)) {
    throw new RangeError(`elevationDeg of a horizon point must be -90 to 90, got ${elevationDeg}`);
  }
}
