import { mustLie } from '@wintergap/ground';

/** A point of a surveyed horizon; between points it runs straight, and round through north. */
export interface HorizonPoint {
  azimuthDeg: number;
  elevationDeg: number;
}

/** Elevation of the horizon at each whole degree of azimuth, 0 to 360, never below 0; all 0 without a horizon. */
export function horizonByDegree(horizon: readonly HorizonPoint[] | undefined): Float64Array {
  const byDegree = new Float64Array(361);
  if (!horizon || horizon.length === 0) return byDegree;
  for (const { azimuthDeg, elevationDeg } of horizon) {
    mustLie('azimuthDeg of a horizon point', azimuthDeg, 0, 360);
    mustLie('elevationDeg of a horizon point', elevationDeg, -90, 90);
  }
  const points = horizon
    .map(({ azimuthDeg, elevationDeg }) => ({ azimuthDeg: azimuthDeg % 360, elevationDeg }))
    .sort((a, b) => a.azimuthDeg - b.azimuthDeg);
  const first = points[0]!;
  const last = points.at(-1)!;
  const round = [
    { ...last, azimuthDeg: last.azimuthDeg - 360 },
    ...points,
    { ...first, azimuthDeg: first.azimuthDeg + 360 },
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
