import { hoursPerYear, mustHold, radiansPerDegree as rad } from '@wintergap/ground';
import { diffuseFraction } from './diffuse-fraction.js';
import type { SunYear } from './sun-year.js';

/** No beam below 3 degrees of altitude: dividing by so small a cosine makes nonsense. */
const lowestCosZenith = Math.sin(3 * rad);

/**
 * Beam and diffuse of each hour from the global irradiance alone, by the hourly curve of Erbs, Klein and Duffie (1982).
 * Every hour closes: ghi = dhi + dni x mean cosine of the zenith angle. In the hour of sunrise or sunset the beam is
 * therefore that of the part of the hour with the sun up. All is diffuse while the sun's mean altitude is under 3
 * degrees, and the beam never exceeds the extraterrestrial irradiance; what it cannot take stays diffuse.
 *
 * @throws OutOfRangeError when there are not 8760 hours, or an irradiance is negative or not a number
 */
export function splitGlobal(
  ghiWm2: Float64Array,
  sun: Pick<SunYear, 'upShare' | 'meanCosZenith' | 'extraterrestrialNormalWm2'>,
): { dniWm2: Float64Array; dhiWm2: Float64Array } {
  mustHold('ghiWm2', ghiWm2, hoursPerYear, 0, 1e5);
  const { upShare, meanCosZenith, extraterrestrialNormalWm2 } = sun;
  const dniWm2 = new Float64Array(hoursPerYear);
  const dhiWm2 = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    const ghi = ghiWm2[h]!;
    const cos = meanCosZenith[h]!;
    if (cos < lowestCosZenith * upShare[h]! || cos === 0) {
      dhiWm2[h] = ghi;
      continue;
    }
    const normal = extraterrestrialNormalWm2[h]!;
    const beam = ghi * (1 - diffuseFraction(ghi / (normal * cos)));
    const dni = Math.min(normal, beam / cos);
    dniWm2[h] = dni;
    dhiWm2[h] = ghi - dni * cos;
  }
  return { dniWm2, dhiWm2 };
}
