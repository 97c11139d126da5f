import { radiansPerDegree as rad } from '@wintergap/ground';

// De Soto, Klein & Beckman (2006), Solar Energy 80(1), 78-88: refractive index, absorption per m, thickness in m.
const refraction = 1.526;
const absorption = 4;
const thickness = 0.002;

// Fresnel and Bouguer for both polarisations, with Snell's law; sines and tangents of sums are turned into cosines.
function transmittance(cosIncidence: number): number {
  const cosInside = Math.sqrt(1 - (1 - cosIncidence * cosIncidence) / (refraction * refraction));
  const across = (cosIncidence - refraction * cosInside) / (cosIncidence + refraction * cosInside);
  const along = (refraction * cosIncidence - cosInside) / (refraction * cosIncidence + cosInside);
  return Math.exp((-absorption * thickness) / cosInside) * (1 - (across * across + along * along) / 2);
}

const straightOn = transmittance(1);

/**
 * Share of light that passes the cover glass into the cells, relative to light that falls on it straight: 1 at normal
 * incidence, 0 at grazing incidence and from behind.
 *
 * Source: De Soto, Klein & Beckman (2006), eq. 15 and 16.
 */
export function glassFactor(cosIncidence: number): number {
  return cosIncidence > 0 ? transmittance(Math.min(1, cosIncidence)) / straightOn : 0;
}

/**
 * Glass factor of the light from the whole sky: that of beam at an equivalent angle.
 *
 * Source: Brandemuehl & Beckman (1980), Solar Energy 24(5), 511-513 (Duffie & Beckman eq. 5.4.2).
 *
 * @param tiltDeg tilt of the plane, 0 to 90 degrees
 */
export function skyGlassFactor(tiltDeg: number): number {
  return glassFactor(Math.cos((59.7 - 0.1388 * tiltDeg + 0.001497 * tiltDeg ** 2) * rad));
}

/**
 * Glass factor of the light from the ground: that of beam at an equivalent angle.
 *
 * Source: Brandemuehl & Beckman (1980), Solar Energy 24(5), 511-513 (Duffie & Beckman eq. 5.4.1).
 *
 * @param tiltDeg tilt of the plane, 0 to 90 degrees
 */
export function groundGlassFactor(tiltDeg: number): number {
  return glassFactor(Math.cos((90 - 0.5788 * tiltDeg + 0.002693 * tiltDeg ** 2) * rad));
}
