import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import { cosIncidence, type Pointing, pointsPerHour, type SunYear } from '@wintergap/irradiance';
import type { Mount } from './mount.js';
import { facingOf } from './pointing.js';
import { turnFrom } from './sun-tracking.js';

const usualDegPerMin = 6;

/**
 * What the mount's motors draw, W, mean of each hour; `null` for a mount without a drive. A drive given by its power
 * runs for as long as the way from point to point takes, booked in the hour in which it sets out; azimuth and tilt of two axes turn one after the other. A daily
 * amount is spread evenly over the day.
 *
 * @param where the mount's pointing, stowing and stuck times included
 */
export function driveLoadW(mount: Mount, sun: SunYear, where: Pointing): Float64Array | null {
  if (mount.kind === 'fixed' || mount.kind === 'seasonal' || !mount.drive) return null;
  const loadW = new Float64Array(hoursPerYear);
  if (mount.drive.kind === 'daily') return loadW.fill(mount.drive.whPerDay / 24);
  const { powerW, degPerMin = usualDegPerMin } = mount.drive;
  const { tiltDeg, azimuthDeg } = where;
  const facing = mount.kind === 'one-axis' ? 0 : facingOf(mount, sun);
  let before = hoursPerYear * pointsPerHour - 1;
  for (let h = 0; h < hoursPerYear; h++) {
    let turned = 0;
    for (let i = h * pointsPerHour; i < (h + 1) * pointsPerHour; i++) {
      if (tiltDeg[i] !== tiltDeg[before] || azimuthDeg[i] !== azimuthDeg[before]) {
        if (mount.kind === 'one-axis') {
          const cos = cosIncidence(tiltDeg[before]!, azimuthDeg[before]!, tiltDeg[i]!, azimuthDeg[i]!);
          turned += Math.acos(Math.min(1, Math.max(-1, cos))) / rad;
        } else {
          turned += Math.abs(turnFrom(facing, azimuthDeg[i]!) - turnFrom(facing, azimuthDeg[before]!));
          if (mount.kind === 'two-axis') turned += Math.abs(tiltDeg[i]! - tiltDeg[before]!);
        }
      }
      before = i;
    }
    loadW[h] = (powerW * turned) / (degPerMin * 60);
  }
  return loadW;
}
