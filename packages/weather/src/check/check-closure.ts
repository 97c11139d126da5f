import { hoursPerYear } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import type { Notice, WeatherYear } from '../weather-year.js';

/** How well global = diffuse + beam x cos(zenith) holds. */
export interface Closure {
  /** Daylight hours compared. */
  hours: number;
  /** Hours off by more than 20 W/m2 and more than 5 %. */
  offHours: number;
  offShare: number;
  /** Mean of global minus the sum of its parts, W/m2. */
  meanGapWm2: number;
}

const offWm2 = 20;
const offRelative = 0.05;

/**
 * Compares global irradiance with its parts. Sources differ in the hours of sunrise and sunset: some average the beam over
 * the hour, some over its sunlit part. As in `planeYear`, both readings and what lies between them close.
 */
export function measureClosure(weather: WeatherYear, sun: SunYear): Closure {
  const { ghiWm2, dniWm2, dhiWm2 } = weather;
  let hours = 0;
  let offHours = 0;
  let sum = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    if (sun.upShare[h]! === 0) continue;
    const left = ghiWm2[h]! - dhiWm2[h]!;
    const least = dniWm2[h]! * sun.meanCosZenith[h]!;
    const most = least / sun.upShare[h]!;
    const gap = left < least ? left - least : Math.max(0, left - most);
    hours++;
    sum += gap;
    if (Math.abs(gap) > offWm2 && Math.abs(gap) > offRelative * ghiWm2[h]!) offHours++;
  }
  return { hours, offHours, offShare: hours > 0 ? offHours / hours : 0, meanGapWm2: hours > 0 ? sum / hours : 0 };
}

export function closureNotices(closure: Closure): Notice[] {
  if (closure.offShare < 0.1) return [];
  const percent = Math.round(closure.offShare * 100);
  return [
    {
      code: 'closure',
      level: closure.offShare > 0.5 ? 'error' : 'warning',
      text: `in ${percent} % of the daylight hours global irradiance differs from diffuse + beam x cos(zenith) by more than 20 W/m2 and 5 % (mean ${closure.meanGapWm2.toFixed(1)} W/m2): columns, clock or place may be wrong`,
      rows: closure.offHours,
    },
  ];
}
