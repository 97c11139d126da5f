import { radiansPerDegree as rad } from '@wintergap/ground';
import { airMass } from './air-mass.js';

// Perez, Ineichen, Seals, Michalsky & Stewart (1990), Solar Energy 44(5), 271-289: the printed table, three decimals.
// Columns: lowest clearness of the bin, F11, F12, F13, F21, F22, F23.
// biome-ignore format: as printed
const table = Float64Array.of(
  1,     -0.008,  0.588, -0.062, -0.060,  0.072, -0.022,
  1.065,  0.130,  0.683, -0.151, -0.019,  0.066, -0.029,
  1.230,  0.330,  0.487, -0.221,  0.055, -0.064, -0.026,
  1.500,  0.568,  0.187, -0.295,  0.109, -0.152, -0.014,
  1.950,  0.873, -0.392, -0.362,  0.226, -0.462,  0.001,
  2.800,  1.132, -1.237, -0.412,  0.288, -0.823,  0.056,
  4.500,  1.060, -1.600, -0.359,  0.264, -1.127,  0.131,
  6.200,  0.678, -0.327, -0.250,  0.156, -1.377,  0.251,
);
const columns = 7;

/** Cosine of 85 degrees: the sun's aureole is not concentrated further when the sun is lower. */
export const lowestAureoleCos: number = Math.cos(85 * rad);

/**
 * Writes the brightness of the sun's surroundings and of the horizon, as shares of the diffuse irradiance, into
 * `out[0]` (0 to 1) and `out[1]` (may be negative).
 *
 * Source: Perez et al. (1990). That the first is at most 1 is added here: no more light than there is can come from
 * around the sun; the table exceeds 1 by up to 0.06 in the clearest skies.
 *
 * @param diffuseWm2 on the horizontal, above 0
 * @param beamNormalWm2 beam on a plane that faces the sun
 * @param zenithDeg apparent zenith angle, degrees
 * @param airMassThere `airMass(zenithDeg)`
 */
export function perezBrightness(
  diffuseWm2: number,
  beamNormalWm2: number,
  extraterrestrialNormalWm2: number,
  zenithDeg: number,
  airMassThere: number,
  out: Float64Array,
): void {
  const z = zenithDeg * rad;
  const cube = 1.041 * z * z * z;
  const clearness = ((diffuseWm2 + beamNormalWm2) / diffuseWm2 + cube) / (1 + cube);
  let at = table.length - columns;
  while (at > 0 && clearness < table[at]!) at -= columns;
  const delta = (diffuseWm2 * airMassThere) / extraterrestrialNormalWm2;
  out[0] = Math.min(1, Math.max(0, table[at + 1]! + table[at + 2]! * delta + table[at + 3]! * z));
  out[1] = table[at + 4]! + table[at + 5]! * delta + table[at + 6]! * z;
}

const shares = new Float64Array(2);

/**
 * Diffuse irradiance from the sky on a tilted plane, W/m2, never negative.
 *
 * Source: Perez et al. (1990), eq. 9.
 */
export function perezSkyWm2(
  diffuseWm2: number,
  beamNormalWm2: number,
  extraterrestrialNormalWm2: number,
  zenithDeg: number,
  cosIncidence: number,
  tiltDeg: number,
): number {
  if (diffuseWm2 <= 0) return 0;
  perezBrightness(diffuseWm2, beamNormalWm2, extraterrestrialNormalWm2, zenithDeg, airMass(zenithDeg), shares);
  const around = shares[0]!;
  const concentration = Math.max(0, cosIncidence) / Math.max(lowestAureoleCos, Math.cos(zenithDeg * rad));
  const dome = (1 - around) * ((1 + Math.cos(tiltDeg * rad)) / 2) + shares[1]! * Math.sin(tiltDeg * rad);
  return diffuseWm2 * (around * concentration + Math.max(0, dome));
}
