import { hoursPerYear } from './hour-of-year.js';
import type { WeatherPlace } from './weather-year.js';

const rad = Math.PI / 180;
const pointsPerHour = 6;
// Kopp and Lean (2011), Geophys. Res. Lett. 38, L01706.
const solarConstantWm2 = 1361;

/** The sun of every hour of the year at one place. */
export interface SunHours {
  /** Part of the hour that the sun is above the horizon, 0 to 1. */
  upFraction: Float64Array;
  /** Mean cosine of the zenith angle over the part of the hour that the sun is up; 0 when it is down. */
  cosZenith: Float64Array;
  /** Extraterrestrial irradiance facing the sun, W/m2. */
  extraNormalWm2: Float64Array;
}

/** A place whose sun can be computed. */
export type SunPlace = Required<Pick<WeatherPlace, 'latitudeDeg' | 'longitudeDeg' | 'utcOffsetH'>>;

/** The place, when enough of it is known to compute the sun. */
export function sunPlace(place: WeatherPlace): SunPlace | null {
  const { latitudeDeg, longitudeDeg, utcOffsetH } = place;
  if (latitudeDeg === undefined || longitudeDeg === undefined || utcOffsetH === undefined) return null;
  return { latitudeDeg, longitudeDeg, utcOffsetH };
}

// Days from the epoch J2000.0 to 1 January 2001, 00:00 UTC. Rows carry no year that means anything (a typical year
// is joined from many), so one year stands for all; between years the declination of a date differs by up to 0.2 deg.
const daysSinceEpoch = 365.5;

/**
 * Mean sun of each hour, without refraction.
 *
 * Source: Michalsky (1988), Solar Energy 40(3), 227-235, the low-precision formulas of the Astronomical Almanac
 * (0.01 degrees): mean longitude and anomaly, ecliptic longitude, obliquity, distance.
 */
export function sunHours(place: SunPlace): SunHours {
  const upFraction = new Float64Array(hoursPerYear);
  const cosZenith = new Float64Array(hoursPerYear);
  const extraNormalWm2 = new Float64Array(hoursPerYear);
  const sinLatitude = Math.sin(place.latitudeDeg * rad);
  const cosLatitude = Math.cos(place.latitudeDeg * rad);
  const longitudeShiftH = place.longitudeDeg / 15 - place.utcOffsetH;
  for (let h = 0; h < hoursPerYear; h++) {
    const n = daysSinceEpoch + (h + 0.5 - place.utcOffsetH) / 24;
    const meanLongitudeDeg = 280.46 + 0.9856474 * n;
    const anomaly = (357.528 + 0.9856003 * n) * rad;
    const longitude = (meanLongitudeDeg + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * rad;
    const obliquity = (23.439 - 0.0000004 * n) * rad;
    const sinDeclination = Math.sin(obliquity) * Math.sin(longitude);
    const rightAscension = Math.atan2(Math.cos(obliquity) * Math.sin(longitude), Math.cos(longitude));
    const turnsAhead = (meanLongitudeDeg - rightAscension / rad) / 360;
    const equationOfTimeH = (turnsAhead - Math.round(turnsAhead)) * 24;
    const distance = 1.00014 - 0.01671 * Math.cos(anomaly) - 0.00014 * Math.cos(2 * anomaly);
    extraNormalWm2[h] = solarConstantWm2 / distance ** 2;
    const steady = sinLatitude * sinDeclination;
    const swing = cosLatitude * Math.sqrt(1 - sinDeclination ** 2);
    let up = 0;
    let sum = 0;
    for (let p = 0; p < pointsPerHour; p++) {
      const solarTimeH = (h % 24) + (p + 0.5) / pointsPerHour + longitudeShiftH + equationOfTimeH;
      const cos = steady - swing * Math.cos(solarTimeH * 15 * rad);
      if (cos > 0) {
        up++;
        sum += cos;
      }
    }
    upFraction[h] = up / pointsPerHour;
    cosZenith[h] = up > 0 ? sum / up : 0;
  }
  return { upFraction, cosZenith, extraNormalWm2 };
}
