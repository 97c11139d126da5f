import type { HourColumns } from './hour-columns.js';
import { hoursPerYear } from './hour-of-year.js';
import { type SunHours, sunHours, sunPlace } from './sun-hours.js';
import { WeatherError } from './weather-error.js';
import type { WeatherPlace } from './weather-year.js';

/** Beam is not worked out from a difference when the sun is lower than about 3 degrees: dividing makes nonsense. */
const lowestCosZenith = 0.05;

/**
 * Fills in, hour by hour, what can be known of global, beam and diffuse irradiance from the others by
 * global = diffuse + beam x cos(zenith), with the mean zenith angle of the hour while the sun is up.
 * Hours with global irradiance alone are split by Erbs, Klein and Duffie (1982). Dark hours are 0.
 * Hours that have none of the three, or not enough, stay NaN.
 */
export function completeIrradiance(hours: HourColumns, place: WeatherPlace): 'file' | 'erbs' {
  const column = (name: 'ghi' | 'dni' | 'dhi'): Float64Array => {
    const present = hours.columns.get(name) ?? new Float64Array(hoursPerYear).fill(Number.NaN);
    hours.columns.set(name, present);
    return present;
  };
  const ghi = column('ghi');
  const dni = column('dni');
  const dhi = column('dhi');
  if (![ghi, dni, dhi].some((values) => values.includes(Number.NaN))) return hours.splitByErbs ? 'erbs' : 'file';

  const where = sunPlace(place);
  if (!where) {
    // Three columns with holes: short ones are bridged later without knowing the sun.
    if ([ghi, dni, dhi].every((values) => !values.every(Number.isNaN))) return 'file';
    throw new WeatherError(
      hours.source,
      1,
      'beam or diffuse irradiance is missing, and to work it out latitude, longitude and UTC offset of the place are needed',
    );
  }
  const sun = sunHours(where);
  let split = 0;
  let daylight = 0;
  let derived = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const known = (ghi[h]! >= 0 ? 1 : 0) + (dni[h]! >= 0 ? 2 : 0) + (dhi[h]! >= 0 ? 4 : 0);
    if (sun.upFraction[h]! === 0) {
      if (known === 7) continue;
      const glow = known === 0 || known === 2 ? 0 : known % 2 === 1 ? ghi[h]! : dhi[h]!;
      ghi[h] = glow;
      dhi[h] = glow;
      dni[h] = 0;
      continue;
    }
    daylight++;
    const cos = sun.cosZenith[h]!;
    if (known === 7) continue;
    if (known === 6) ghi[h] = dhi[h]! + dni[h]! * cos;
    else if (known === 5) dni[h] = beamFromDifference(ghi[h]! - dhi[h]!, cos, sun.extraNormalWm2[h]!);
    else if (known === 3) dhi[h] = Math.min(ghi[h]!, Math.max(0, ghi[h]! - dni[h]! * cos));
    else if (known === 1) {
      splitHour(h, ghi, dni, dhi, sun);
      split++;
      continue;
    } else continue;
    derived++;
  }
  if (split > 0) {
    hours.notices.push({
      code: 'split-by-erbs',
      level: 'note',
      text: `beam and diffuse of ${split} daylight hours were split from the global irradiance (Erbs, Klein and Duffie 1982)`,
      rows: split,
    });
  }
  if (derived > 0) {
    hours.notices.push({
      code: 'third-from-two',
      level: 'note',
      text: `in ${derived} daylight hours the third of global, beam and diffuse was worked out from the other two`,
      rows: derived,
    });
  }
  return split > daylight / 2 ? 'erbs' : 'file';
}

const beamFromDifference = (beamOnHorizontalWm2: number, cos: number, extraNormalWm2: number): number =>
  cos < lowestCosZenith ? 0 : Math.min(extraNormalWm2, Math.max(0, beamOnHorizontalWm2 / cos));

function splitHour(h: number, ghi: Float64Array, dni: Float64Array, dhi: Float64Array, sun: SunHours): void {
  const cos = sun.cosZenith[h]!;
  const ceiling = sun.extraNormalWm2[h]! * cos * sun.upFraction[h]!;
  const clearness = ceiling > 0 ? Math.min(1, ghi[h]! / ceiling) : 0;
  const fraction = cos < lowestCosZenith ? 1 : diffuseFraction(clearness);
  dhi[h] = ghi[h]! * fraction;
  dni[h] = fraction < 1 ? beamFromDifference(ghi[h]! - dhi[h]!, cos, sun.extraNormalWm2[h]!) : 0;
}

// Erbs, Klein and Duffie (1982), Solar Energy 28(4), 293-302.
function diffuseFraction(kt: number): number {
  if (kt <= 0.22) return 1 - 0.09 * kt;
  if (kt > 0.8) return 0.165;
  return 0.9511 - 0.1604 * kt + 4.388 * kt ** 2 - 16.638 * kt ** 3 + 12.336 * kt ** 4;
}
