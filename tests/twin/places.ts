import { join } from 'node:path';
import { realWeather, realWeatherNames } from '../shared-folder.js';

/** A place with a year of weather. */
export interface Place {
  name: string;
  weather: string;
  latitude: number;
  longitude: number;
  elevationM: number;
  utcOffsetH: number;
}

/** The invented place of the demo. */
export const pond: Place = {
  name: 'Kettle Pond',
  weather: join(import.meta.dirname, '../../data-demo/kettle-pond.csv'),
  latitude: 46.9,
  longitude: -92.2,
  elevationM: 430,
  utcOffsetH: -6,
};

const real: Record<(typeof realWeatherNames)[number], Omit<Place, 'weather'>> = {
  'chicago-ohare-tmy3.epw': { name: 'Chicago', latitude: 41.98, longitude: -87.92, elevationM: 201, utcOffsetH: -6 },
  'new-york-central-park-tmy3.epw': {
    name: 'New York',
    latitude: 40.78,
    longitude: -73.97,
    elevationM: 40,
    utcOffsetH: -5,
  },
  'mannheim-try.epw': { name: 'Mannheim', latitude: 49.52, longitude: 8.55, elevationM: 96, utcOffsetH: 1 },
};

/** The places of the real weather files that are at hand. */
export const realPlaces = (): Place[] =>
  realWeatherNames.flatMap((file) => {
    const weather = realWeather(file);
    return weather === null ? [] : [{ ...real[file], weather }];
  });
