import { hoursPerYear, hourText } from '@wintergap/ground';
import { clearSkyWm2, type SunYear } from '@wintergap/irradiance';
import { cosWhileUp } from '../sun-of-place.js';
import type { Notice, WeatherYear } from '../weather-year.js';

/** Above the clear-sky curve by this factor and offset, an hourly mean is brighter than broken clouds explain. */
const brightFactor = 1.2;
const brightOffsetWm2 = 40;

/**
 * Counts hours of irradiance that no sky gives.
 *
 * Physical limits of the Baseline Surface Radiation Network (Long and Shi 2008, Open Atmos. Sci. J. 2, 23-37; from
 * memory), m the cosine of the zenith angle and S the extraterrestrial irradiance facing the sun:
 * global up to 1.5 S m^1.2 + 100, diffuse up to 0.95 S m^1.2 + 50, beam up to S. The clear-sky curve is Haurwitz
 * (1945), raised by 1 % for each 100 m of elevation (common practice, no source).
 */
export function skyLimitNotices(weather: WeatherYear, sun: SunYear): Notice[] {
  const { ghiWm2, dniWm2, dhiWm2, place } = weather;
  const rise = 1 + Math.max(0, place.elevationM ?? 0) * 1e-4;
  const impossible: number[] = [];
  const dark: number[] = [];
  const bright: number[] = [];
  for (let h = 0; h < hoursPerYear; h++) {
    const m = cosWhileUp(sun, h);
    const up = sun.upShare[h]!;
    const normal = sun.extraterrestrialNormalWm2[h]!;
    const shape = normal * m ** 1.2 * up;
    if (ghiWm2[h]! > 1.5 * shape + 100 || dhiWm2[h]! > 0.95 * shape + 50 || dniWm2[h]! > normal) impossible.push(h);
    if (up === 0 && ghiWm2[h]! > 20) dark.push(h);
    else if (ghiWm2[h]! > clearSkyWm2(m) * up * rise * brightFactor + brightOffsetWm2) bright.push(h);
  }
  const notices: Notice[] = [];
  const report = (code: string, level: Notice['level'], hours: number[], what: string): void => {
    if (hours.length === 0) return;
    const text = `${hours.length} hours ${what}, the first from ${hourText(hours[0]!)}`;
    notices.push({ code, level, text, rows: hours.length });
  };
  report(
    'impossible-irradiance',
    impossible.length > 20 ? 'error' : 'warning',
    impossible,
    'exceed what the sky can give',
  );
  report('sun-at-night', dark.length > 20 ? 'error' : 'warning', dark, 'have sunshine with the sun down');
  if (bright.length > 40) report('too-bright', 'warning', bright, 'are brighter than a clear sky by a fifth');
  return notices;
}
