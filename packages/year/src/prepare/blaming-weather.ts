import { hoursPerYear, hourText } from '@wintergap/ground';
import { SiteError } from '@wintergap/site';
import { WeatherError, type WeatherYear } from '@wintergap/weather';

/** More than any hour of any place has: the sun above the air gives 1412 W/m2. */
const mostWm2 = 1412;

/**
 * Makes something of an array under weather: where it fails and the weather has irradiance that no sky gives, the weather
 * file and the line are to blame and not the array.
 *
 * @throws WeatherError in place of a SiteError then
 */
export function blamingWeather<Result>(weather: WeatherYear, make: () => Result): Result {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    const h = firstBeyondSky(weather);
    if (h === null) throw error;
    const { ghiWm2, dniWm2, dhiWm2, lineOfHour, source } = weather;
    const values = [ghiWm2, dniWm2, dhiWm2].map((column) => Number(column[h]!.toPrecision(4))).join(', ');
    throw new WeatherError(
      source,
      lineOfHour?.[h] || 1,
      `global, beam and diffuse irradiance of the hour from ${hourText(h)} are ${values} W/m2, which no array can be worked out with; expected what the sky can give`,
    );
  }
}

/** The first hour with light that makes an array fail: brighter than the sun above the air, or as bright with it down. */
function firstBeyondSky({ ghiWm2, dniWm2, dhiWm2 }: WeatherYear): number | null {
  for (let h = 0; h < hoursPerYear; h++) {
    if (Math.max(ghiWm2[h]!, dniWm2[h]!, dhiWm2[h]!) > mostWm2) return h;
  }
  // Beam that is far too strong for its global comes from low suns.
  for (let h = 0; h < hoursPerYear; h++) if (dniWm2[h]! > 100 && ghiWm2[h]! > dniWm2[h]! + dhiWm2[h]! + 100) return h;
  return null;
}
