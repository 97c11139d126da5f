import { hoursPerYear } from '@wintergap/ground';
import type { Irradiance, PlaneSettings, Pointing } from './plane-year.js';
import { pointsPerHour } from './year-grid.js';

/** @throws RangeError when an array has a wrong length or a value outside its range */
export function checkPlane(irradiance: Irradiance, pointing: Pointing, { albedo, skyModel }: PlaneSettings): void {
  const points = hoursPerYear * pointsPerHour;
  within('ghiWm2', irradiance.ghiWm2, hoursPerYear, 0, 1e5);
  within('dniWm2', irradiance.dniWm2, hoursPerYear, 0, 1e5);
  within('dhiWm2', irradiance.dhiWm2, hoursPerYear, 0, 1e5);
  within('albedo', albedo, hoursPerYear, 0, 1);
  within('tiltDeg', pointing.tiltDeg, points, 0, 90);
  within('azimuthDeg', pointing.azimuthDeg, points, -360, 720);
  if (skyModel !== 'perez' && skyModel !== 'hay-davies' && skyModel !== 'isotropic') {
    throw new RangeError(`skyModel must be perez, hay-davies or isotropic, got ${skyModel}`);
  }
}

function within(name: string, values: Float64Array, length: number, low: number, high: number): void {
  if (values.length !== length) throw new RangeError(`${name} must have ${length} values, got ${values.length}`);
  for (let i = 0; i < length; i++) {
    const value = values[i]!;
    if (!(value >= low && value <= high)) {
      throw new RangeError(`${name} must be ${low} to ${high}, got ${value} at index ${i}`);
    }
  }
}
