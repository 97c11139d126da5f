import { daysPerYear, mustBeWhole, mustLie, OutOfRangeError } from '@wintergap/ground';
import type { Motor, Mount, TiltPeriod } from './mount.js';

const azimuth = (name: string, value: number): void => mustLie(name, value, 0, 360);
const tilt = (name: string, value: number): void => mustLie(name, value, 0, 90);
const day = (name: string, value: number): void => mustBeWhole(name, value, 0, daysPerYear - 1);

/** @throws OutOfRangeError when a mount cannot be built */
export function checkMount(mount: Mount): void {
  switch (mount.kind) {
    case 'fixed':
      tilt('tiltDeg', mount.tiltDeg);
      azimuth('azimuthDeg', mount.azimuthDeg);
      return;
    case 'seasonal':
      azimuth('azimuthDeg', mount.azimuthDeg);
      checkTilts(mount.tilts);
      return;
    case 'pole':
      checkTilts(mount.tilts);
      mustLie('turnDeg', mount.turnDeg, 0, 360);
      if (mount.facingDeg !== undefined) azimuth('facingDeg', mount.facingDeg);
      checkMotor(mount);
      return;
    case 'one-axis':
      tilt('axisTiltDeg', mount.axisTiltDeg);
      azimuth('axisAzimuthDeg', mount.axisAzimuthDeg);
      mustLie('limitDeg', mount.limitDeg, 0, 90);
      checkMotor(mount);
      return;
    case 'two-axis':
      tilt('minTiltDeg', mount.minTiltDeg);
      mustLie('maxTiltDeg', mount.maxTiltDeg, mount.minTiltDeg, 90);
      if (mount.turnDeg !== undefined) mustLie('turnDeg', mount.turnDeg, 0, 360);
      if (mount.facingDeg !== undefined) azimuth('facingDeg', mount.facingDeg);
      checkMotor(mount);
      return;
    default:
      throw new OutOfRangeError(
        `kind of a mount must be fixed, seasonal, pole, one-axis or two-axis, got ${(mount as { kind: unknown }).kind}`,
      );
  }
}

function checkTilts(tilts: readonly TiltPeriod[]): void {
  if (tilts.length === 0) throw new OutOfRangeError('tilts must have at least one period, got none');
  for (const period of tilts) {
    day('fromDay of a tilt', period.fromDay);
    tilt('tiltDeg of a tilt', period.tiltDeg);
  }
  if (new Set(tilts.map(({ fromDay }) => fromDay)).size < tilts.length) {
    throw new OutOfRangeError('tilts must begin on different days');
  }
}

function checkMotor({ drive, stowAboveMs, stuck }: Motor): void {
  if (drive?.kind === 'while-turning') {
    mustLie('powerW of the drive', drive.powerW, 0, 1e5);
    if (drive.degPerMin !== undefined) mustLie('degPerMin of the drive', drive.degPerMin, 0.01, 1e4);
  } else if (drive) mustLie('whPerDay of the drive', drive.whPerDay, 0, 1e6);
  if (stowAboveMs !== undefined) mustLie('stowAboveMs', stowAboveMs, 0, 1000);
  for (const time of stuck ?? []) {
    day('fromDay of a stuck time', time.fromDay);
    day('toDay of a stuck time', time.toDay);
    azimuth('azimuthDeg of a stuck time', time.azimuthDeg);
    if (time.tiltDeg !== undefined) tilt('tiltDeg of a stuck time', time.tiltDeg);
  }
}
