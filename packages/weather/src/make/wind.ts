import { hoursPerYear, monthOfHour } from '@wintergap/ground';
import { monthMeans } from './monthly-smooth.js';
import type { RandomStream } from './random.js';

/**
 * Made hourly wind speed: the length of a vector whose two components wander independently, so that speeds follow
 * Rayleigh's distribution (Weibull with shape 2) and an hour resembles the one before (lag-one correlation near 0.8).
 * Afternoons are a fifth windier, nights a fifth calmer: common practice, no source. Months have exactly the means.
 *
 * @param meanMs for each month, m/s
 * @param solarNoonH local standard time of solar noon
 */
export function wanderingWind(meanMs: ArrayLike<number>, solarNoonH: number, random: RandomStream): Float64Array {
  const memory = 0.92;
  const fresh = Math.sqrt(1 - memory * memory);
  const windMs = new Float64Array(hoursPerYear);
  let east = random.normal();
  let north = random.normal();
  for (let h = 0; h < hoursPerYear; h++) {
    east = memory * east + fresh * random.normal();
    north = memory * north + fresh * random.normal();
    const strongestAt = solarNoonH + 2;
    const day = 1 + 0.2 * Math.cos((((h % 24) + 0.5 - strongestAt) * 2 * Math.PI) / 24);
    windMs[h] = day * Math.sqrt(east * east + north * north);
  }
  const means = monthMeans(windMs);
  for (let h = 0; h < hoursPerYear; h++) {
    const month = monthOfHour(h);
    windMs[h]! *= meanMs[month]! / means[month]!;
  }
  return windMs;
}
