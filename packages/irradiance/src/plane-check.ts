import { hoursPerYear, mustHold, OutOfRangeError } from '@wintergap/ground';
import type { Irradiance, PlaneSettings, Pointing } from './plane-input.js';
import { pointsPerHour } from './sun-year.js';

/** @throws OutOfRangeError when an array has a wrong length or a value outside its range */
export function checkPlane(irradiance: Irradiance, pointing: Pointing, { albedo, skyModel }: PlaneSettings): void {
  const points = hoursPerYear * pointsPerHour;
  mustHold('ghiWm2', irradiance.ghiWm2, hoursPerYear, 0, 1e5);
  mustHold('dniWm2', irradiance.dniWm2, hoursPerYear, 0, 1e5);
  mustHold('dhiWm2', irradiance.dhiWm2, hoursPerYear, 0, 1e5);
  mustHold('albedo', albedo, hoursPerYear, 0, 1);
  mustHold('tiltDeg', pointing.tiltDeg, points, 0, 90);
  mustHold('azimuthDeg', pointing.azimuthDeg, points, -360, 720);
  if (skyModel !== 'perez' && skyModel !== 'hay-davies' && skyModel !== 'isotropic') {
    throw new OutOfRangeError(`skyModel must be perez, hay-davies or isotropic, got ${skyModel}`);
  }
}
