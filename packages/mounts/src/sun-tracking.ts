import type { SunYear } from '@wintergap/irradiance';
import type { OneAxisMount, PoleMount, TwoAxisMount } from './mount.js';
import { axisRotationDeg, rotatedPlane } from './one-axis.js';
import { tiltByDay } from './seasons.js';

/** A mount that follows the sun. */
export type MovingMount = PoleMount | OneAxisMount | TwoAxisMount;

/** Azimuth toward the equator. */
export const equatorward = (latitudeDeg: number): number => (latitudeDeg < 0 ? 0 : 180);

/** Degrees that an azimuth lies clockwise of another, -180 to 180. */
export function turnFrom(facingDeg: number, azimuthDeg: number): number {
  return ((((azimuthDeg - facingDeg + 180) % 360) + 360) % 360) - 180;
}

/**
 * Where a moving plane points under a sun in a given direction, written to `out[0]` (tilt) and `out[1]` (azimuth).
 * Made once for a mount; the function it returns does not allocate.
 */
export function sunTracking(
  mount: MovingMount,
  sun: SunYear,
): (day: number, zenithDeg: number, sunAzimuthDeg: number, out: Float64Array) => void {
  if (mount.kind === 'one-axis') {
    const { axisTiltDeg, axisAzimuthDeg, limitDeg } = mount;
    return (_day, zenithDeg, sunAzimuthDeg, out) => {
      const rotation = axisRotationDeg(zenithDeg, sunAzimuthDeg, axisTiltDeg, axisAzimuthDeg);
      rotatedPlane(Math.min(limitDeg, Math.max(-limitDeg, rotation)), axisTiltDeg, axisAzimuthDeg, out);
    };
  }
  const facing = mount.facingDeg ?? equatorward(sun.place.latitudeDeg);
  const half = (mount.turnDeg ?? 360) / 2;
  const azimuth = (sunAzimuthDeg: number): number =>
    (facing + Math.min(half, Math.max(-half, turnFrom(facing, sunAzimuthDeg))) + 360) % 360;
  if (mount.kind === 'pole') {
    const tilts = tiltByDay(mount.tilts);
    return (day, _zenithDeg, sunAzimuthDeg, out) => {
      out[0] = tilts[day]!;
      out[1] = azimuth(sunAzimuthDeg);
    };
  }
  const { minTiltDeg, maxTiltDeg } = mount;
  return (_day, zenithDeg, sunAzimuthDeg, out) => {
    out[0] = Math.min(maxTiltDeg, Math.max(minTiltDeg, zenithDeg));
    out[1] = azimuth(sunAzimuthDeg);
  };
}

/**
 * Where a moving plane stands safe from wind: as level as it goes, facing the middle of its turn. A pole's tilt is set by
 * hand, so `out[0]` says nothing of it.
 */
export function stowed(mount: MovingMount, latitudeDeg: number, out: Float64Array): void {
  if (mount.kind === 'one-axis') {
    rotatedPlane(0, mount.axisTiltDeg, mount.axisAzimuthDeg, out);
    return;
  }
  out[0] = mount.kind === 'two-axis' ? mount.minTiltDeg : 0;
  out[1] = mount.facingDeg ?? equatorward(latitudeDeg);
}
