import { radiansPerDegree as rad } from '@wintergap/ground';

/**
 * Length of the sunbeam's path through the air, 1 straight up at sea level, about 38 at the horizon.
 *
 * Source: Kasten and Young (1989), Applied Optics 28(22), 4735-4738. The fit is up to 0.44 % off their table at the
 * horizon. Below the horizon the value at the horizon is returned.
 *
 * @param zenithDeg apparent (refracted) zenith angle, degrees
 */
export function airMass(zenithDeg: number): number {
  const zenith = Math.min(90, zenithDeg);
  return 1 / (Math.cos(zenith * rad) + 0.50572 * (96.07995 - zenith) ** -1.6364);
}
