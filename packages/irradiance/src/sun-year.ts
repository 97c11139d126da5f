import {
  daysPerYear,
  hoursPerYear,
  mustBeWhole,
  mustLie,
  OutOfRangeError,
  radiansPerDegree as rad,
} from '@wintergap/ground';
import { getPosition, getTimes } from 'suncalc';
import { declinationDeg, distanceFactor, solarConstantWm2 } from './extraterrestrial.js';

/** Moments of each hour at which the sun's direction counts: minutes 7.5, 22.5, 37.5 and 52.5. */
export const pointsPerHour = 4;

const hourMs = 3_600_000;
const pointMs = hourMs / pointsPerHour;
const daysToLeapDay = 59;

/** Where the sun is seen from, and by which clock the hours run. */
export interface Place {
  /** North positive, -90 to 90. */
  latitudeDeg: number;
  /** East positive, -180 to 180. */
  longitudeDeg: number;
  /** Hours that local standard time is ahead of UTC, east positive. */
  utcOffsetH: number;
  /**
   * `standard`, local standard time, unless said otherwise. `sundial` for data kept in true solar time, in which the
   * sun is highest at 12:00 every day; the UTC offset then has no effect.
   */
  clock?: 'standard' | 'sundial' | undefined;
}

/** The sun of a year at a place. Point p of hour h has the index 4 h + p and falls on minute 7.5 + 15 p. */
export interface SunYear {
  place: Place;
  /** Apparent (refracted) zenith angle of each point, degrees; 180 while the sun is down. */
  zenithDeg: Float64Array;
  /** Azimuth of each point, degrees clockwise from north; 0 while the sun is down. */
  azimuthDeg: Float64Array;
  /** Cosine of the zenith angle of each point; 0 while the sun is down. */
  cosZenith: Float64Array;
  /** Share of the hour's points that have the sun up: 0, 1/4, 1/2, 3/4 or 1. */
  upShare: Float64Array;
  /** Cosine of the zenith angle, averaged over the four points, 0 counting while the sun is down. */
  meanCosZenith: Float64Array;
  /** Irradiance above the air on a plane that faces the sun, W/m2: Spencer (1971), constant over a day. */
  extraterrestrialNormalWm2: Float64Array;
}

/**
 * Directions to the sun through a year, by suncalc. 29 February is left out in leap years.
 *
 * @param calendarYear which year's sun; between years the same hour's sun differs by up to half a degree
 * @throws OutOfRangeError when the place or the year is outside its range
 */
export function sunYear(place: Place, calendarYear = 2025): SunYear {
  checkPlace(place, calendarYear);
  const { latitudeDeg, longitudeDeg, utcOffsetH } = place;
  const points = hoursPerYear * pointsPerHour;
  const zenithDeg = new Float64Array(points).fill(180);
  const azimuthDeg = new Float64Array(points);
  const cosZenith = new Float64Array(points);
  const upShare = new Float64Array(hoursPerYear);
  const meanCosZenith = new Float64Array(hoursPerYear);
  const extraterrestrialNormalWm2 = new Float64Array(hoursPerYear);

  const startMs = Date.UTC(calendarYear, 0, 1);
  const leapMs = new Date(Date.UTC(calendarYear, 1, 29)).getUTCMonth() === 1 ? 24 * hourMs : 0;
  const sinLatitude = Math.sin(latitudeDeg * rad);
  const cosLatitude = Math.cos(latitudeDeg * rad);
  const date = new Date(startMs);

  for (let day = 0; day < daysPerYear; day++) {
    const declination = declinationDeg(day) * rad;
    const steady = sinLatitude * Math.sin(declination);
    const swing = cosLatitude * Math.cos(declination);
    const normalWm2 = solarConstantWm2 * distanceFactor(day);
    const midnightMs = startMs + day * 24 * hourMs + (day >= daysToLeapDay ? leapMs : 0);
    const dayMs = place.clock === 'sundial' ? solarMidnight(midnightMs, place) : midnightMs - utcOffsetH * hourMs;
    // Hours of mean solar time at midnight of the clock; the equation of time stays within 0.3 h of it.
    const solarH = (dayMs - midnightMs) / hourMs + longitudeDeg / 15;
    for (let hour = 0; hour < 24; hour++) {
      const h = day * 24 + hour;
      extraterrestrialNormalWm2[h] = normalWm2;
      if (steady - swing * Math.cos((hour + 0.5 + solarH) * 15 * rad) < surelyDark) continue;
      let up = 0;
      let sum = 0;
      for (let p = 0; p < pointsPerHour; p++) {
        date.setTime(dayMs + hour * hourMs + (p + 0.5) * pointMs);
        const { altitude, azimuth } = getPosition(date, latitudeDeg, longitudeDeg);
        if (altitude <= 0) continue;
        const i = h * pointsPerHour + p;
        const cos = Math.sin(altitude * rad);
        zenithDeg[i] = 90 - altitude;
        azimuthDeg[i] = azimuth;
        cosZenith[i] = cos;
        up++;
        sum += cos;
      }
      upShare[h] = up / pointsPerHour;
      meanCosZenith[h] = sum / pointsPerHour;
    }
  }
  return { place: { ...place }, zenithDeg, azimuthDeg, cosZenith, upShare, meanCosZenith, extraterrestrialNormalWm2 };
}

// The sun moves at most 15 degrees an hour, of which half is after the middle of the hour; 4.5 degrees more are left
// for the equation of time. So no point of the hour has the sun up when its middle lies 12 degrees below the horizon.
const surelyDark = Math.sin(-12 * rad);

/** The moment (UTC) twelve hours before the sun is highest on the day that begins at `midnightMs` of the sundial. */
function solarMidnight(midnightMs: number, { latitudeDeg, longitudeDeg }: Place): number {
  const noon = new Date(midnightMs + (12 - longitudeDeg / 15) * hourMs);
  return getTimes(noon, latitudeDeg, longitudeDeg).solarNoon.getTime() - 12 * hourMs;
}

function checkPlace({ latitudeDeg, longitudeDeg, utcOffsetH, clock }: Place, calendarYear: number): void {
  mustLie('latitudeDeg', latitudeDeg, -90, 90);
  mustLie('longitudeDeg', longitudeDeg, -180, 180);
  mustLie('utcOffsetH', utcOffsetH, -14, 14);
  mustBeWhole('calendarYear', calendarYear, 1900, 2150);
  if (clock !== undefined && clock !== 'standard' && clock !== 'sundial') {
    throw new OutOfRangeError(`clock must be standard or sundial, got ${clock}`);
  }
}
