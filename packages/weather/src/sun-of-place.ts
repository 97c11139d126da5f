import { type SunYear, sunYear } from '@wintergap/irradiance';
import type { WeatherPlace } from './weather-year.js';

/** A place whose sun can be computed. */
export type SunPlace = Required<Pick<WeatherPlace, 'latitudeDeg' | 'longitudeDeg' | 'utcOffsetH'>>;

/** The place, when enough of it is known to compute the sun. */
export function sunPlace(place: WeatherPlace): SunPlace | null {
  const { latitudeDeg, longitudeDeg, utcOffsetH } = place;
  if (latitudeDeg === undefined || longitudeDeg === undefined || utcOffsetH === undefined) return null;
  return { latitudeDeg, longitudeDeg, utcOffsetH };
}

let latest: SunYear | null = null;

/**
 * The sun of a place through a year, to be read and not written to. The latest one is kept, as reading, examining and
 * resampling a year ask for the same one in turn.
 *
 * @throws OutOfRangeError when the place is outside its range
 */
export function sunOf({ latitudeDeg, longitudeDeg, utcOffsetH }: SunPlace): SunYear {
  const kept = latest?.place;
  const same =
    kept?.latitudeDeg === latitudeDeg && kept.longitudeDeg === longitudeDeg && kept.utcOffsetH === utcOffsetH;
  if (!latest || !same) latest = sunYear({ latitudeDeg, longitudeDeg, utcOffsetH });
  return latest;
}

/** Mean cosine of the zenith angle over the part of an hour that the sun is up; 0 while it is down. */
export function cosWhileUp(sun: SunYear, h: number): number {
  const up = sun.upShare[h]!;
  return up > 0 ? sun.meanCosZenith[h]! / up : 0;
}
