import { dayIsWithin, daysPerYear, hoursPerYear, OutOfRangeError } from '@wintergap/ground';
import { type Pointing, pointsPerHour, type SunYear } from '@wintergap/irradiance';
import type { Mount, Stuck } from './mount.js';
import { checkMount } from './mount-check.js';
import { tiltByDay } from './seasons.js';
import { equatorward, type MovingMount, stowed, sunTracking } from './sun-tracking.js';

const pointsPerDay = 24 * pointsPerHour;
const points = hoursPerYear * pointsPerHour;

/**
 * Where a mount points its plane at each point of the year.
 *
 * Mounts that move follow the sun while it is up. After sunset they turn back to where they will meet it in the
 * morning; through polar night they stand stowed. In hours of more wind than they bear they stand stowed too; a stuck
 * time overrides everything.
 *
 * @param windMs wind speed of each hour; needed only by mounts that stow
 * @throws OutOfRangeError when the mount cannot be built, or wind is missing for one that stows
 */
export function pointing(mount: Mount, sun: SunYear, windMs?: Float64Array | undefined): Pointing {
  checkMount(mount);
  const tiltDeg = new Float64Array(points);
  const azimuthDeg = new Float64Array(points);
  const where = { tiltDeg, azimuthDeg };
  if (mount.kind === 'fixed') {
    tiltDeg.fill(mount.tiltDeg);
    azimuthDeg.fill(mount.azimuthDeg);
    return where;
  }
  if (mount.kind === 'seasonal') {
    azimuthDeg.fill(mount.azimuthDeg);
    fillTilts(tiltDeg, tiltByDay(mount.tilts));
    return where;
  }
  follow(where, mount, sun);
  if (mount.stowAboveMs !== undefined) stow(where, mount, mount.stowAboveMs, sun, windMs);
  for (const time of mount.stuck ?? []) stick(where, mount, time, sun.place.latitudeDeg);
  return where;
}

/** Tilt of each hour, degrees, mean of its points; what snow on the plane needs to know of a mount. */
export function hourlyTiltDeg({ tiltDeg }: Pointing): Float64Array {
  const hourly = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    let sum = 0;
    for (let i = h * pointsPerHour; i < (h + 1) * pointsPerHour; i++) sum += tiltDeg[i]!;
    hourly[h] = sum / pointsPerHour;
  }
  return hourly;
}

function fillTilts(tiltDeg: Float64Array, byDay: Float64Array): void {
  for (let day = 0; day < daysPerYear; day++) tiltDeg.fill(byDay[day]!, day * pointsPerDay, (day + 1) * pointsPerDay);
}

function follow({ tiltDeg, azimuthDeg }: Pointing, mount: MovingMount, sun: SunYear): void {
  const { cosZenith, zenithDeg, azimuthDeg: sunAzimuthDeg } = sun;
  const track = sunTracking(mount, sun);
  const out = new Float64Array(2);
  stowed(mount, sun.place.latitudeDeg, out);
  // Backward, so that the night takes the position of the morning that follows; twice round for New Year's Eve.
  for (let pass = 0; pass < 2; pass++) {
    let darkPoints = 0;
    for (let i = points - 1; i >= 0; i--) {
      if (cosZenith[i]! > 0) {
        track(Math.floor(i / pointsPerDay), zenithDeg[i]!, sunAzimuthDeg[i]!, out);
        darkPoints = 0;
      } else if (darkPoints++ === pointsPerDay) stowed(mount, sun.place.latitudeDeg, out);
      tiltDeg[i] = out[0]!;
      azimuthDeg[i] = out[1]!;
    }
  }
  // The tilt of a pole changes by hand at midnight, not with the sun.
  if (mount.kind === 'pole') fillTilts(tiltDeg, tiltByDay(mount.tilts));
}

function stow(
  { tiltDeg, azimuthDeg }: Pointing,
  mount: MovingMount,
  aboveMs: number,
  sun: SunYear,
  windMs: Float64Array | undefined,
): void {
  if (windMs?.length !== hoursPerYear) {
    throw new OutOfRangeError(`windMs must have 8760 hours for a mount that stows, got ${windMs?.length ?? 'none'}`);
  }
  const out = new Float64Array(2);
  stowed(mount, sun.place.latitudeDeg, out);
  for (let h = 0; h < hoursPerYear; h++) {
    if (!(windMs[h]! > aboveMs)) continue;
    if (mount.kind !== 'pole') tiltDeg.fill(out[0]!, h * pointsPerHour, (h + 1) * pointsPerHour);
    azimuthDeg.fill(out[1]!, h * pointsPerHour, (h + 1) * pointsPerHour);
  }
}

function stick({ tiltDeg, azimuthDeg }: Pointing, mount: MovingMount, time: Stuck, latitudeDeg: number): void {
  const seasonal = mount.kind === 'pole' ? tiltByDay(mount.tilts) : null;
  const resting =
    mount.kind === 'two-axis'
      ? Math.min(mount.maxTiltDeg, Math.max(mount.minTiltDeg, Math.abs(latitudeDeg)))
      : mount.kind === 'one-axis'
        ? mount.axisTiltDeg
        : 0;
  for (let day = 0; day < daysPerYear; day++) {
    if (!dayIsWithin(day, time.fromDay, time.toDay)) continue;
    const tilt = time.tiltDeg ?? seasonal?.[day] ?? resting;
    tiltDeg.fill(tilt, day * pointsPerDay, (day + 1) * pointsPerDay);
    azimuthDeg.fill(time.azimuthDeg, day * pointsPerDay, (day + 1) * pointsPerDay);
  }
}

/** Azimuth of the middle of a mount's turn. */
export function facingOf(mount: { facingDeg?: number | undefined }, sun: SunYear): number {
  return mount.facingDeg ?? equatorward(sun.place.latitudeDeg);
}
