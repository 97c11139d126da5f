import { radiansPerDegree } from '@wintergap/ground';
import type { Notice, WeatherPlace } from '../weather-year.js';

const kmPerDegree = 111.2;

/** Compares where the weather was taken with where it is used. */
export function placeNotices(file: WeatherPlace, site: WeatherPlace): Notice[] {
  const notices: Notice[] = [];
  const { latitudeDeg: lat, longitudeDeg: lon } = file;
  const { latitudeDeg: siteLat, longitudeDeg: siteLon } = site;
  if (lat !== undefined && lon !== undefined && siteLat !== undefined && siteLon !== undefined) {
    const eastKm = wrapDegrees(lon - siteLon) * kmPerDegree * Math.cos(((lat + siteLat) / 2) * radiansPerDegree);
    const km = Math.hypot((lat - siteLat) * kmPerDegree, eastKm);
    if (km > 50) {
      notices.push({
        code: 'far-from-site',
        level: km > 200 ? 'warning' : 'note',
        text: `the weather is from ${Math.round(km)} km away (latitude ${lat}, longitude ${lon})`,
      });
    }
  }
  if (file.elevationM !== undefined && site.elevationM !== undefined) {
    const riseM = Math.round(site.elevationM - file.elevationM);
    if (Math.abs(riseM) > 150) {
      notices.push({
        code: 'other-elevation',
        level: 'warning',
        text: `the site is ${Math.abs(riseM)} m ${riseM > 0 ? 'higher' : 'lower'} than the weather's place: expect it about ${Math.abs(riseM * 0.0065).toFixed(1)} K ${riseM > 0 ? 'colder' : 'warmer'}`,
      });
    }
  }
  if (file.utcOffsetH !== undefined && site.utcOffsetH !== undefined && file.utcOffsetH !== site.utcOffsetH) {
    notices.push({
      code: 'other-utc-offset',
      level: 'warning',
      text: `the weather is in UTC${signed(file.utcOffsetH)}, the site in UTC${signed(site.utcOffsetH)}`,
    });
  }
  return notices;
}

const signed = (hours: number): string => `${hours >= 0 ? '+' : ''}${hours}`;
const wrapDegrees = (degrees: number): number => degrees - 360 * Math.round(degrees / 360);
