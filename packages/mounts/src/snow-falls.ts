import { hoursPerYear } from '@wintergap/ground';

/** New snow in one hour that covers a plane, m. Marion et al. (2013). */
const hourlyFallM = 0.01;
/** New snow in one day that covers a plane, m: one inch. Marion et al. (2013), for daily depths. */
const dailyFallM = 0.0254;

/**
 * Hours in which new snow covers a plane whole: 1 where so, else 0.
 *
 * Source: Marion et al. (2013), Solar Energy 97, 112-121: the depth on the ground has risen by more than 1 cm in the
 * hour. Added here: or by an inch within 24 hours since the plane was last covered, so that slow falls count. Where
 * the depths are daily readings (they only ever change at one hour of the day) the inch alone decides.
 * The step from 31 December to 1 January is not a fall.
 */
export function snowFalls(snowDepthM: Float64Array): Uint8Array {
  const falls = new Uint8Array(hoursPerYear);
  const inHour = isDailyReading(snowDepthM) ? Number.POSITIVE_INFINITY : hourlyFallM;
  let lastFall = -1;
  for (let h = 1; h < hoursPerYear; h++) {
    const rise = snowDepthM[h]! - snowDepthM[h - 1]!;
    if (rise <= 0) continue;
    let risen = 0;
    for (let i = Math.max(1, h - 23, lastFall + 1); i <= h; i++) {
      risen += Math.max(0, snowDepthM[i]! - snowDepthM[i - 1]!);
    }
    // Depths are read to a centimetre or an inch: exactly that much counts as well, rounding aside.
    if (rise > inHour || risen >= dailyFallM - 1e-9) {
      falls[h] = 1;
      lastFall = h;
    }
  }
  return falls;
}

/** Whether depths are readings of once a day: every change falls on the same hour. */
export function isDailyReading(snowDepthM: Float64Array): boolean {
  let hour = -1;
  for (let h = 1; h < hoursPerYear; h++) {
    if (snowDepthM[h] === snowDepthM[h - 1]) continue;
    if (hour >= 0 && h % 24 !== hour) return false;
    hour = h % 24;
  }
  return hour >= 0;
}
