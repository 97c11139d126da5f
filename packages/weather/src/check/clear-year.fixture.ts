import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import { getPosition } from 'suncalc';
import type { WeatherYear } from '../weather-year.js';

const stepsPerHour = 12;

/** A place with a name and everything known, invented. */
export const pond = { name: 'Kettle Pond', latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6, elevationM: 430 };

/**
 * An invented year of clear days (beam 800 W/m2 whenever the sun is up, diffuse a tenth of the clear global) with a
 * cosine for a temperature. The sun is looked at twelve times an hour.
 * Its beam is the mean over the hour, also in the hours of sunrise and sunset.
 *
 * @param clockFastMin minutes that the clock of the file is ahead of standard time at each hour
 */
export function clearYear(place = pond, clockFastMin: (hour: number) => number = () => 0): WeatherYear {
  const ghiWm2 = new Float64Array(hoursPerYear);
  const dniWm2 = new Float64Array(hoursPerYear);
  const dhiWm2 = new Float64Array(hoursPerYear);
  const airC = new Float64Array(hoursPerYear);
  const windMs = new Float64Array(hoursPerYear);
  const start = Date.UTC(2001, 0, 1) - place.utcOffsetH * 3_600_000;
  for (let h = 0; h < hoursPerYear; h++) {
    for (let step = 0; step < stepsPerHour; step++) {
      const minutes = h * 60 + ((step + 0.5) / stepsPerHour) * 60 - clockFastMin(h);
      const { altitude } = getPosition(new Date(start + minutes * 60_000), place.latitudeDeg, place.longitudeDeg);
      const cos = Math.sin(altitude * rad);
      if (cos <= 0) continue;
      dniWm2[h]! += 800 / stepsPerHour;
      dhiWm2[h]! += (100 * cos) / stepsPerHour;
      ghiWm2[h]! += (900 * cos) / stepsPerHour;
    }
    // Rounded as in files; the small term keeps one day from repeating another.
    airC[h] =
      Math.round(50 - 150 * Math.cos((2 * Math.PI * h) / 8760) - 40 * Math.cos((2 * Math.PI * h) / 24)) / 10 + 0;
    windMs[h] = 2 + (h % 7) / 2;
  }
  return {
    source: 'clear year',
    kind: 'made',
    place,
    ghiWm2,
    dniWm2,
    dhiWm2,
    airC,
    windMs,
    snowDepthM: null,
    precipitationMm: null,
    albedo: null,
    relativeHumidity: null,
    pressurePa: null,
    splitFrom: 'file',
    notices: [],
  };
}
