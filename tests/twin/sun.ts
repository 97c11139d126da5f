/** Minutes of a year without leap day. */
export const minutesPerYear = 525_600;

const rad = Math.PI / 180;

/** The sun of a place in the middle of each minute of local standard time, 1 January 00:00 first. */
export interface Sun {
  /** Apparent zenith angle, degrees; below the horizon above 90. */
  zenithDeg: Float64Array;
  /** Degrees clockwise from north. */
  azimuthDeg: Float64Array;
  /** Cosine of the apparent zenith angle; 0 while the sun is down. */
  cosZenith: Float64Array;
}

/**
 * Where the sun stands, minute by minute.
 *
 * Meeus, Astronomical Algorithms, 2nd ed. 1998: apparent longitude by the short series of ch. 25, sidereal time eq. 12.4,
 * horizontal coordinates eqs. 13.5 and 13.6, refraction eq. 16.4 (Saemundsson). Good to about 0.01 degree.
 *
 * @param calendarYear not a leap year
 */
export function sunOfMinutes(latitudeDeg: number, longitudeDeg: number, utcOffsetH: number, calendarYear: number): Sun {
  const sun = {
    zenithDeg: new Float64Array(minutesPerYear),
    azimuthDeg: new Float64Array(minutesPerYear),
    cosZenith: new Float64Array(minutesPerYear),
  };
  // Unix time 0 is the Julian day 2440587.5.
  const firstDay = Date.UTC(calendarYear, 0, 1) / 86_400_000 + 2_440_587.5 - utcOffsetH / 24;
  const sinLatitude = Math.sin(latitudeDeg * rad);
  const cosLatitude = Math.cos(latitudeDeg * rad);
  for (let m = 0; m < minutesPerYear; m++) {
    const days = firstDay + (m + 0.5) / 1440 - 2_451_545;
    const T = days / 36_525;
    const L0 = 280.46646 + 36_000.76983 * T + 0.0003032 * T * T; // 25.2
    const M = (357.52911 + 35_999.05029 * T - 0.0001537 * T * T) * rad; // 25.3
    const C =
      (1.914602 - 0.004817 * T - 0.000014 * T * T) * Math.sin(M) +
      (0.019993 - 0.000101 * T) * Math.sin(2 * M) +
      0.000289 * Math.sin(3 * M);
    const node = (125.04 - 1934.136 * T) * rad;
    const longitude = (L0 + C - 0.00569 - 0.00478 * Math.sin(node)) * rad;
    const obliquity = (23.439291 - 0.0130042 * T + 0.00256 * Math.cos(node)) * rad; // 22.2 and 25.8
    const declination = Math.asin(Math.sin(obliquity) * Math.sin(longitude)); // 25.7
    const ascension = Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude)); // 25.6
    const sidereal = 280.46061837 + 360.98564736629 * days + 0.000387933 * T * T; // 12.4
    const H = (sidereal + longitudeDeg) * rad - ascension;
    const sinDeclination = Math.sin(declination);
    const cosDeclination = Math.cos(declination);
    const sinAltitude = sinLatitude * sinDeclination + cosLatitude * cosDeclination * Math.cos(H); // 13.6
    const altitude = Math.asin(sinAltitude) / rad;
    // 13.5 counts from the south; half a turn more from the north.
    const fromSouth = Math.atan2(
      Math.sin(H) * cosDeclination,
      Math.cos(H) * cosDeclination * sinLatitude - sinDeclination * cosLatitude,
    );
    const apparent = altitude < -1 ? altitude : altitude + refractionDeg(altitude);
    sun.zenithDeg[m] = 90 - apparent;
    sun.azimuthDeg[m] = fromSouth / rad + 180;
    sun.cosZenith[m] = apparent > 0 ? Math.sin(apparent * rad) : 0;
  }
  return sun;
}

/** Meeus eq. 16.4 (Saemundsson 1986), of a true altitude. */
const refractionDeg = (altitudeDeg: number): number =>
  1.02 / 60 / Math.tan((altitudeDeg + 10.3 / (altitudeDeg + 5.11)) * rad);

/**
 * Irradiance above the air on a plane that faces the sun, W/m2: Kopp and Lean (2011) 1361 W/m2 and the distance of
 * Spencer (1971).
 *
 * @param day 0 on 1 January
 */
export function aboveTheAirWm2(day: number): number {
  const B = (2 * Math.PI * day) / 365;
  const distance =
    1.00011 + 0.034221 * Math.cos(B) + 0.00128 * Math.sin(B) + 0.000719 * Math.cos(2 * B) + 0.000077 * Math.sin(2 * B);
  return 1361 * distance;
}

/** Kasten and Young (1989), Applied Optics 28(22), 4735-4738; apparent zenith up to 90 degrees. */
export const airMass = (zenithDeg: number): number =>
  1 / (Math.cos(zenithDeg * rad) + 0.50572 * (96.07995 - zenithDeg) ** -1.6364);
