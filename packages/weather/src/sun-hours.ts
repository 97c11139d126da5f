import { hoursPerYear } from './hour-of-year.js';
import type { WeatherPlace } from './weather-year.js';

const rad = Math.PI / 180;
const pointsPerHour = 6;
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

/**
 * Mean sun of each hour. Declination, equation of time and distance by the series of Spencer (1971), Search 2(5), 172.
 */
export function sunHours(place: SunPlace): SunHours {
  const upFraction = new Float64Array(hoursPerYear);
  const cosZenith = new Float64Array(hoursPerYear);
  const extraNormalWm2 = new Float64Array(hoursPerYear);
  const sinLatitude = Math.sin(place.latitudeDeg * rad);
  const cosLatitude = Math.cos(place.latitudeDeg * rad);
  const longitudeShiftH = place.longitudeDeg / 15 - place.utcOffsetH;
  for (let h = 0; h < hoursPerYear; h++) {
    const b = (2 * Math.PI * ((h + 0.5) / 24 - 0.5)) / 365;
    const c1 = Math.cos(b);
    const s1 = Math.sin(b);
    const c2 = Math.cos(2 * b);
    const s2 = Math.sin(2 * b);
    const declination =
      0.006918 -
      0.399912 * c1 +
      0.070257 * s1 -
      0.006758 * c2 +
      0.000907 * s2 -
      0.002697 * Math.cos(3 * b) +
      0.00148 * Math.sin(3 * b);
    const equationOfTimeH = (229.18 / 60) * (0.000075 + 0.001868 * c1 - 0.032077 * s1 - 0.014615 * c2 - 0.040849 * s2);
    extraNormalWm2[h] = solarConstantWm2 * (1.00011 + 0.034221 * c1 + 0.00128 * s1 + 0.000719 * c2 + 0.000077 * s2);
    const steady = sinLatitude * Math.sin(declination);
    const swing = cosLatitude * Math.cos(declination);
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
