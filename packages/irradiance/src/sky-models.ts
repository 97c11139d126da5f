import { radiansPerDegree as rad } from '@wintergap/ground';
import { lowestAureoleCos } from './perez-sky.js';

/** How the diffuse light of the sky is thought to be spread over it. */
export type SkyModel = 'perez' | 'hay-davies' | 'isotropic';

/** Share of an evenly bright sky's light that a tilted plane receives. Liu and Jordan (1963). */
function skyView(tiltDeg: number): number {
  return (1 + Math.cos(tiltDeg * rad)) / 2;
}

/** Diffuse irradiance on a tilted plane from an evenly bright sky, W/m2. Liu and Jordan (1963), ASHRAE J. 3(10), 53. */
export function isotropicSkyWm2(diffuseWm2: number, tiltDeg: number): number {
  return diffuseWm2 * skyView(tiltDeg);
}

/**
 * Diffuse irradiance on a tilted plane, W/m2, when a part of it comes from around the sun.
 *
 * Source: Hay & Davies (1980), in Hay & Won (eds.), Proc. First Canadian Solar Radiation Data Workshop, 59-72. The
 * cosine of the zenith angle is not taken as less than that of 85 degrees.
 */
export function hayDaviesSkyWm2(
  diffuseWm2: number,
  beamNormalWm2: number,
  extraterrestrialNormalWm2: number,
  zenithDeg: number,
  cosIncidence: number,
  tiltDeg: number,
): number {
  const around = Math.min(1, beamNormalWm2 / extraterrestrialNormalWm2);
  const ratio = Math.max(0, cosIncidence) / Math.max(lowestAureoleCos, Math.cos(zenithDeg * rad));
  return diffuseWm2 * (around * ratio + (1 - around) * skyView(tiltDeg));
}

/** Irradiance on a tilted plane from the ground before it, W/m2. Liu and Jordan (1963). */
export function groundReflectedWm2(ghiWm2: number, albedo: number, tiltDeg: number): number {
  return (ghiWm2 * albedo * (1 - Math.cos(tiltDeg * rad))) / 2;
}
