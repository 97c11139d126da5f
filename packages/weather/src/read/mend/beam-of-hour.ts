import { radiansPerDegree as rad } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';

/** No beam is worked out from a difference below 3 degrees of altitude: dividing by so small a cosine makes nonsense. */
const lowestCosZenith = Math.sin(3 * rad);

/**
 * Beam facing the sun that closes an hour, W/m2: what global less diffuse leaves, over the mean cosine of the zenith
 * angle. In the hour of sunrise or sunset it is that of the part of the hour with the sun up, as in `splitGlobal`. 0
 * while the sun's mean altitude is under 3 degrees; never more than the extraterrestrial irradiance.
 *
 * @param onHorizontalWm2 global less diffuse irradiance, mean of the hour
 */
export function closingBeamWm2(onHorizontalWm2: number, sun: SunYear, h: number): number {
  const cos = sun.meanCosZenith[h]!;
  if (cos < lowestCosZenith * sun.upShare[h]! || cos === 0) return 0;
  return Math.min(sun.extraterrestrialNormalWm2[h]!, Math.max(0, onHorizontalWm2 / cos));
}

/**
 * What the beam of a file brings to the horizontal, W/m2, mean of the hour. The file's beam is taken as its mean over
 * the whole hour, so in the hour of sunrise or sunset it shone stronger while the sun was up.
 */
export function beamOnHorizontalWm2(dniWm2: number, sun: SunYear, h: number): number {
  const up = sun.upShare[h]!;
  if (up === 0) return 0;
  return Math.min(sun.extraterrestrialNormalWm2[h]!, dniWm2 / up) * sun.meanCosZenith[h]!;
}
