import { hoursPerYear, mustHold, OutOfRangeError } from '@wintergap/ground';
import type { GroundAndSky, Irradiance, Pointing } from './plane-input.js';
import { pointsPerHour } from './sun-year.js';

/** @throws OutOfRangeError when an array has a wrong length or a value outside its range */
export function checkPointing(pointing: Pointing): void {
  const points = hoursPerYear * pointsPerHour;
  mustHold('tiltDeg', pointing.tiltDeg, points, 0, 90);
  mustHold('azimuthDeg', pointing.azimuthDeg, points, -360, 720);
}

/** @throws OutOfRangeError when an array has a wrong length or a value outside its range */
export function checkLight(irradiance: Irradiance, { albedo, skyModel }: GroundAndSky): void {
  mustHold('ghiWm2', irradiance.ghiWm2, hoursPerYear, 0, 1e5);
  mustHold('dniWm2', irradiance.dniWm2, hoursPerYear, 0, 1e5);
  mustHold('dhiWm2', irradiance.dhiWm2, hoursPerYear, 0, 1e5);
  mustHold('albedo', albedo, hoursPerYear, 0, 1);
  if (skyModel !== 'perez' && skyModel !== 'hay-davies' && skyModel !== 'isotropic') {
    throw new OutOfRangeError(`skyModel must be perez, hay-davies or isotropic, got ${skyModel}`);
  }
}
