import { hoursPerYear, mustLie } from '@wintergap/ground';

/** Depth from which snow hides what grows on the ground. Common practice, no source. */
const coveringM = 0.05;

/** By so much is a file's albedo higher over snow than over bare ground if it was measured. Common practice, no source. */
const measuredRise = 0.1;

/**
 * Albedo of the ground in each hour: that of the file where it has one above 0, otherwise that of bare ground. Where snow
 * lies, snow's own albedo, mixed in while it is less than 5 cm deep, unless the file's albedo rises with the snow: many
 * files carry one value all year, which says nothing of winter.
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
  mustLie('albedo', albedo, 0, 1);
  mustLie('snowAlbedo', snowAlbedo, 0, 1);
  const followsSnow = fileAlbedo !== null && snowDepthM !== null && risesWithSnow(fileAlbedo, snowDepthM);
  const hourly = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    const stated = fileAlbedo ? fileAlbedo[h]! : 0;
    const isStated = stated > 0 && stated <= 1;
    const ground = isStated ? stated : albedo;
    const depth = snowDepthM ? snowDepthM[h]! : 0;
    const covered = depth > 0 && !(isStated && followsSnow) ? Math.min(1, depth / coveringM) : 0;
    hourly[h] = ground + covered * (snowAlbedo - ground);
  }
  return hourly;
}

/** Whether the values of a file are higher in hours with deep snow than in hours without. */
function risesWithSnow(fileAlbedo: Float64Array, snowDepthM: Float64Array): boolean {
  let snowSum = 0;
  let snowHours = 0;
  let bareSum = 0;
  let bareHours = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const stated = fileAlbedo[h]!;
    if (!(stated > 0 && stated <= 1)) continue;
    if (snowDepthM[h]! >= coveringM) {
      snowSum += stated;
      snowHours++;
    } else if (!(snowDepthM[h]! > 0)) {
      bareSum += stated;
      bareHours++;
    }
  }
  // Only snow, or none: nothing to compare, and nothing that speaks against the file.
  if (snowHours === 0 || bareHours === 0) return true;
  return snowSum / snowHours >= bareSum / bareHours + measuredRise;
}
