import { daysPerYear, radiansPerDegree as rad } from '@wintergap/ground';

/** Total solar irradiance at the mean distance, W/m2. Kopp and Lean (2011), Geophys. Res. Lett. 38, L01706. */
export const solarConstantWm2 = 1361;

const dayAngle = (day: number): number => (2 * Math.PI * day) / daysPerYear;

/**
 * Square of mean over actual distance to the sun, 0.967 to 1.035.
 *
 * Source: Spencer (1971), Search 2(5), 172.
 *
 * @param day 0 on 1 January, 364 on 31 December
 */
export function distanceFactor(day: number): number {
  const b = dayAngle(day);
  return (
    1.00011 + 0.034221 * Math.cos(b) + 0.00128 * Math.sin(b) + 0.000719 * Math.cos(2 * b) + 0.000077 * Math.sin(2 * b)
  );
}

/**
 * Declination of the sun, degrees, for closed forms; `sunYear` has the sun itself.
 *
 * Source: Spencer (1971), Search 2(5), 172. The same every year, so up to 0.6 degrees off the sun of a given year.
 *
 * @param day 0 on 1 January, 364 on 31 December
 */
export function declinationDeg(day: number): number {
  const b = dayAngle(day);
  return (
    (0.006918 -
      0.399912 * Math.cos(b) +
      0.070257 * Math.sin(b) -
      0.006758 * Math.cos(2 * b) +
      0.000907 * Math.sin(2 * b) -
      0.002697 * Math.cos(3 * b) +
      0.00148 * Math.sin(3 * b)) /
    rad
  );
}

/**
 * Hour angle at which the centre of the sun sets behind a flat horizon, degrees: 0 in polar night, 180 in polar day.
 *
 * Source: Duffie & Beckman (2013), eq. 1.6.10.
 */
export function sunsetHourAngleDeg(latitudeDeg: number, declination: number): number {
  const cos = -Math.tan(latitudeDeg * rad) * Math.tan(declination * rad);
  return Math.acos(Math.min(1, Math.max(-1, cos))) / rad;
}

/**
 * Extraterrestrial irradiation of a day on the horizontal, Wh/m2.
 *
 * Source: Duffie & Beckman (2013), eq. 1.10.3, with Spencer's distance and declination.
 *
 * @param day 0 on 1 January, 364 on 31 December
 */
export function extraterrestrialDayWhM2(
  latitudeDeg: number,
  day: number,
  constantWm2: number = solarConstantWm2,
): number {
  return (24 / 360) * integral(latitudeDeg, day, sunsetHourAngleDeg(latitudeDeg, declinationDeg(day))) * constantWm2;
}

/**
 * Extraterrestrial irradiation on the horizontal between two hour angles, Wh/m2. The part of the interval before
 * sunrise or after sunset counts nothing.
 *
 * Source: Duffie & Beckman (2013), eq. 1.10.4, with Spencer's distance and declination.
 *
 * @param fromDeg hour angle at the start, -180 to 180, 0 at solar noon, 15 per hour
 * @param toDeg hour angle at the end, not before the start
 */
export function extraterrestrialHourWhM2(
  latitudeDeg: number,
  day: number,
  fromDeg: number,
  toDeg: number,
  constantWm2: number = solarConstantWm2,
): number {
  const sunset = sunsetHourAngleDeg(latitudeDeg, declinationDeg(day));
  const from = Math.min(sunset, Math.max(-sunset, fromDeg));
  const to = Math.min(sunset, Math.max(-sunset, toDeg));
  return ((integral(latitudeDeg, day, to) - integral(latitudeDeg, day, from)) / 2) * (24 / 360) * constantWm2;
}

/** Twice the integral of the cosine of the zenith angle from noon to an hour angle, degrees, times the distance factor. */
function integral(latitudeDeg: number, day: number, hourAngleDeg: number): number {
  const declination = declinationDeg(day) * rad;
  const latitude = latitudeDeg * rad;
  const swing = Math.cos(latitude) * Math.cos(declination) * Math.sin(hourAngleDeg * rad);
  const steady = Math.sin(latitude) * Math.sin(declination) * hourAngleDeg * rad;
  return (2 * distanceFactor(day) * (swing + steady)) / rad;
}
