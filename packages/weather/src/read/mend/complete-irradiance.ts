import { hoursPerYear } from '@wintergap/ground';
import { type SunYear, splitGlobal } from '@wintergap/irradiance';
import { sunOf, sunPlace } from '../../sun-of-place.js';
import { WeatherError } from '../../weather-error.js';
import type { WeatherPlace } from '../../weather-year.js';
import type { HourColumns } from '../hour-columns.js';
import { beamOnHorizontalWm2, closingBeamWm2 } from './beam-of-hour.js';

/**
 * Fills in, hour by hour, what can be known of global, beam and diffuse irradiance from the others by
 * global = diffuse + beam x cos(zenith). Hours with global irradiance alone are split by Erbs, Klein and Duffie (1982).
 * Dark hours are 0. Hours that have none of the three, or not enough, stay NaN. A file that has all three in every hour
 * is left as it is, and its sun is not asked for.
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
  const sun = sunOf(where);
  const toSplit: number[] = [];
  let daylight = 0;
  let derived = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const dark = sun.upShare[h]! === 0;
    if (!dark) daylight++;
    const known = (ghi[h]! >= 0 ? 1 : 0) + (dni[h]! >= 0 ? 2 : 0) + (dhi[h]! >= 0 ? 4 : 0);
    if (known === 7) continue;
    if (dark) {
      const glow = known === 0 || known === 2 ? 0 : known % 2 === 1 ? ghi[h]! : dhi[h]!;
      ghi[h] = glow;
      dhi[h] = glow;
      dni[h] = 0;
      continue;
    }
    if (known === 6) ghi[h] = dhi[h]! + beamOnHorizontalWm2(dni[h]!, sun, h);
    else if (known === 5) dni[h] = closingBeamWm2(ghi[h]! - dhi[h]!, sun, h);
    else if (known === 3) dhi[h] = Math.max(0, ghi[h]! - beamOnHorizontalWm2(dni[h]!, sun, h));
    else if (known === 1) {
      toSplit.push(h);
      continue;
    } else continue;
    derived++;
  }
  if (toSplit.length > 0) splitHours(toSplit, ghi, dni, dhi, sun);
  noteWorkedOut(hours, toSplit.length, derived);
  return toSplit.length > daylight / 2 ? 'erbs' : 'file';
}

function noteWorkedOut({ notices }: HourColumns, split: number, derived: number): void {
  if (split > 0) {
    notices.push({
      code: 'split-by-erbs',
      level: 'note',
      text: `beam and diffuse of ${split} daylight hours were split from the global irradiance (Erbs, Klein and Duffie 1982)`,
      rows: split,
    });
  }
  if (derived > 0) {
    notices.push({
      code: 'third-from-two',
      level: 'note',
      text: `in ${derived} daylight hours the third of global, beam and diffuse was worked out from the other two`,
      rows: derived,
    });
  }
}

/** Beam and diffuse of some hours from their global irradiance. */
function splitHours(
  which: readonly number[],
  ghi: Float64Array,
  dni: Float64Array,
  dhi: Float64Array,
  sun: SunYear,
): void {
  const global = new Float64Array(hoursPerYear);
  for (const h of which) global[h] = ghi[h]!;
  const { dniWm2, dhiWm2 } = splitGlobal(global, sun);
  for (const h of which) {
    dni[h] = dniWm2[h]!;
    dhi[h] = dhiWm2[h]!;
  }
}
