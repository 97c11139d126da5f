import { radiansPerDegree as rad } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import { cosWhileUp } from '../sun-of-place.js';
import type { RandomStream } from './random.js';
import { restoreSum } from './restore.js';

/**
 * Mean, spread and memory of the hourly clearness on a day of clearness K.
 *
 * Source: Aguiar & Collares-Pereira (1992), TAG: a time-dependent, autoregressive, Gaussian model for generating
 * synthetic hourly radiation, Solar Energy 49(3), 167-174.
 *
 * @param sinAltitude sine of the sun's altitude, above 0
 */
export function hourlyClearness(K: number, sinAltitude: number): { mean: number; spread: number; memory: number } {
  const level = -0.19 + 1.12 * K + 0.24 * Math.exp(-8 * K);
  const rise = 0.32 - 1.6 * (K - 0.5) * (K - 0.5);
  const depth = 0.19 + 2.27 * K * K - 2.51 * K * K * K;
  const A = 0.14 * Math.exp(-20 * (K - 0.35) * (K - 0.35));
  const B = 3 * (K - 0.45) * (K - 0.45) + 16 * K * K * K * K * K;
  return {
    mean: level + rise * Math.exp(-depth / sinAltitude),
    spread: A * Math.exp(B * (1 - sinAltitude)),
    memory: 0.38 + 0.06 * Math.cos(7.4 * K - 2.5),
  };
}

/**
 * Hourly global irradiance with clouds that come and go, from the clearness of each day: a Gaussian wander about the
 * mean course of the day, kept between zero and the ceiling, then moved together until the day has its sum.
 *
 * @param daySums what the 24 hourly values of each day shall sum to
 * @param extraterrestrialWm2 on the horizontal, hourly
 * @param ceilingWm2 no hour is brighter
 */
export function scatteredHours(
  daySums: Float64Array,
  sun: SunYear,
  extraterrestrialWm2: Float64Array,
  ceilingWm2: Float64Array,
  random: RandomStream,
): Float64Array {
  const hours = new Float64Array(daySums.length * 24);
  let wander = 0;
  for (let day = 0; day < daySums.length; day++) {
    const first = day * 24;
    let outside = 0;
    for (let h = first; h < first + 24; h++) outside += extraterrestrialWm2[h]!;
    if (outside <= 0) continue;
    const K = daySums[day]! / outside;
    for (let h = first; h < first + 24; h++) {
      const sinAltitude = cosWhileUp(sun, h);
      if (sinAltitude <= 0) continue;
      const { mean, spread, memory } = hourlyClearness(K, sinAltitude);
      wander = memory * wander + Math.sqrt(1 - memory * memory) * random.normal();
      hours[h] = (mean + spread * wander) * extraterrestrialWm2[h]!;
    }
    restoreSum(hours, ceilingWm2, first, first + 24, daySums[day]!);
  }
  return hours;
}

/** The two coefficients of Collares-Pereira & Rabl, from the sunset hour angle in radians. */
function courseOfDay(ws: number): { a: number; b: number } {
  return { a: 0.409 + 0.5016 * Math.sin(ws - 60 * rad), b: 0.6609 - 0.4767 * Math.sin(ws - 60 * rad) };
}

/**
 * Ratio of an hour's to the day's global irradiation in the long-term mean.
 *
 * Source: Collares-Pereira & Rabl (1979), Solar Energy 22, 155-164; Duffie & Beckman, Solar Engineering of Thermal
 * Processes, eq. 2.13.2. Zero at night. The 24 values of a day sum to about 0.995, not to 1.
 *
 * @param hourAngleDeg of the middle of the hour, 0 at solar noon
 * @param sunsetHourAngleDeg above 0, up to 180
 */
export function hourToDayRatio(hourAngleDeg: number, sunsetHourAngleDeg: number): number {
  const w = hourAngleDeg * rad;
  const ws = sunsetHourAngleDeg * rad;
  if (Math.abs(hourAngleDeg) >= sunsetHourAngleDeg) return 0;
  const { a, b } = courseOfDay(ws);
  return ((Math.PI / 24) * (a + b * Math.cos(w)) * (Math.cos(w) - Math.cos(ws))) / (Math.sin(ws) - ws * Math.cos(ws));
}

/**
 * Hourly global irradiance with a smooth course on every day, by the ratio of Collares-Pereira & Rabl. The ratio is
 * their a + b cos w times the extraterrestrial share of the hour, which is taken from the sun itself so that hours cut
 * by sunrise and sunset are right; then each day is moved to its sum below the ceiling.
 *
 * @param solarNoonH local standard time of solar noon; the equation of time may be left out
 */
export function smoothHours(
  daySums: Float64Array,
  sun: SunYear,
  extraterrestrialWm2: Float64Array,
  ceilingWm2: Float64Array,
  solarNoonH: number,
): Float64Array {
  const hours = new Float64Array(daySums.length * 24);
  for (let day = 0; day < daySums.length; day++) {
    const first = day * 24;
    let upHours = 0;
    for (let h = first; h < first + 24; h++) upHours += sun.upShare[h]!;
    if (upHours <= 0) continue;
    const { a, b } = courseOfDay(Math.min(180, upHours * 7.5) * rad);
    let sum = 0;
    for (let h = first; h < first + 24; h++) {
      const w = (h - first + 0.5 - solarNoonH) * 15 * rad;
      hours[h] = Math.max(0.01, a + b * Math.cos(w)) * extraterrestrialWm2[h]!;
      sum += hours[h]!;
    }
    if (sum <= 0) continue;
    for (let h = first; h < first + 24; h++) hours[h]! *= daySums[day]! / sum;
    restoreSum(hours, ceilingWm2, first, first + 24, daySums[day]!);
  }
  return hours;
}
