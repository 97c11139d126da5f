import { hoursPerYear } from '@wintergap/ground';

/** Depth from which snow hides what grows on the ground. Common practice, no source. */
const coveringM = 0.05;

/**
 * Albedo of the ground in each hour. A value from the file is used where there is one above 0; otherwise bare ground,
 * snow, or a mixture while the snow is less than 5 cm deep.
 *
 * @param albedo of bare ground, 0 to 1
 * @param snowAlbedo of snow-covered ground, 0 to 1
 */
export function groundAlbedo(
  snowDepthM: Float64Array | null,
  albedo: number,
  snowAlbedo: number,
  fileAlbedo: Float64Array | null,
): Float64Array {
  for (const value of [albedo, snowAlbedo]) {
    if (!(value >= 0 && value <= 1)) throw new RangeError(`albedo must be 0 to 1, got ${value}`);
  }
  const hourly = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    const stated = fileAlbedo ? fileAlbedo[h]! : 0;
    if (stated > 0 && stated <= 1) {
      hourly[h] = stated;
      continue;
    }
    const depth = snowDepthM ? snowDepthM[h]! : 0;
    const covered = depth > 0 ? Math.min(1, depth / coveringM) : 0;
    hourly[h] = albedo + covered * (snowAlbedo - albedo);
  }
  return hourly;
}
