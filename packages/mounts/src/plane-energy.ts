import { OutOfRangeError } from '@wintergap/ground';
import { type Irradiance, type PlaneSettings, planeYear, type SunYear } from '@wintergap/irradiance';
import type { Mount } from './mount.js';
import { pointing } from './pointing.js';

const monthStartDay = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

/**
 * Energy that reaches the cells of a plane in chosen months, kWh/m2, after skyline and glass: a score for the tilt
 * search, for the whole year or for the dark months only.
 *
 * @param months 1 to 12; the whole year unless given
 */
export function planeEnergyKWhM2(
  mount: Mount,
  sun: SunYear,
  irradiance: Irradiance,
  settings: PlaneSettings,
  months: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
): number {
  const { effectiveWm2 } = planeYear(sun, irradiance, pointing(mount, sun), settings);
  let sumWh = 0;
  for (const month of months) {
    if (!Number.isInteger(month) || month < 1 || month > 12)
      throw new OutOfRangeError(`month must be 1 to 12, got ${month}`);
    for (let h = monthStartDay[month - 1]! * 24; h < monthStartDay[month]! * 24; h++) sumWh += effectiveWm2[h]!;
  }
  return sumWh / 1000;
}
