import { OutOfRangeError } from '@wintergap/ground';
import type { WeatherYear } from '../../weather-year.js';

// International Standard Atmosphere (ISO 2533): lapse rate, and the exponent g M / (R L) of the barometric formula.
const lapseKPerM = 0.0065;
const seaLevelK = 288.15;
const barometricExponent = 5.25588;
const furthestM = 4000;

/**
 * The same weather as it would be higher up or lower down: air cooler by 6.5 K for each 1000 m, pressure by the
 * standard atmosphere. Irradiance, wind and precipitation are left alone, and cold air lying in valleys on winter
 * nights is not described by a lapse rate.
 *
 * @param fromM elevation the weather is from, m
 * @param toM elevation wanted, m
 */
export function moveToElevation(weather: WeatherYear, fromM: number, toM: number): WeatherYear {
  const riseM = toM - fromM;
  if (!(Math.abs(riseM) <= furthestM)) {
    throw new OutOfRangeError(`toM must be within ${furthestM} m of fromM, got ${fromM} to ${toM}`);
  }
  const pressureRatio = ((seaLevelK - lapseKPerM * toM) / (seaLevelK - lapseKPerM * fromM)) ** barometricExponent;
  return {
    ...weather,
    place: { ...weather.place, elevationM: toM },
    airC: weather.airC.map((air) => air - lapseKPerM * riseM),
    pressurePa: weather.pressurePa?.map((pressure) => pressure * pressureRatio) ?? null,
    notices: [
      ...weather.notices,
      {
        code: 'moved-to-elevation',
        level: 'note',
        text: `air temperature moved from ${fromM} m to ${toM} m by 6.5 K for each 1000 m`,
      },
    ],
  };
}
