import type { Site } from '@wintergap/site';
import type { WeatherPlace } from '@wintergap/weather';

/** Where the weather is used. */
export function sitePlace({ place }: Site): WeatherPlace {
  return {
    latitudeDeg: place.latitude,
    longitudeDeg: place.longitude,
    utcOffsetH: place.utcOffset,
    elevationM: place.elevation,
  };
}
