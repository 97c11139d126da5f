import { type SunYear, sunYear } from '@wintergap/irradiance';
import { groundAlbedo, snowDepthFromDays } from '@wintergap/mounts';
import type { Site } from '@wintergap/site';
import { hasSnowData, snowDepthFrom, type WeatherYear } from '@wintergap/weather';
import { identityOf, type PreparedCache } from './prepared-cache.js';

/** The sun and the ground around the arrays. */
export interface Outdoors {
  sun: SunYear;
  /** `null` when the weather says nothing of snow. */
  snowDepthM: Float64Array | null;
  albedo: Float64Array;
}

/** The sun over the site, and the snow and the albedo of its ground. */
export function prepareOutdoors(site: Site, weather: WeatherYear, prepared: PreparedCache): Outdoors {
  const { ground } = site;
  const sun = siteSun(site, prepared);
  const { snowDepthM, albedo } = prepared.get('ground', [identityOf(weather), site.snow.days, ground], () => {
    const depth =
      snowDepthFrom(weather) ?? (site.snow.days ? snowDepthFromDays(site.snow.days, weather.airC, snowSeed) : null);
    return { snowDepthM: depth, albedo: groundAlbedo(depth, ground.albedo, ground.snowAlbedo, weather.albedo) };
  });
  return { sun, snowDepthM, albedo };
}

/** The sun of the site's calendar year. */
export function siteSun({ place, calendarYear }: Site, prepared: PreparedCache): SunYear {
  return prepared.lasting('sun', [place, calendarYear], () =>
    sunYear({ latitudeDeg: place.latitude, longitudeDeg: place.longitude, utcOffsetH: place.utcOffset }, calendarYear),
  );
}

/** What tells of snow, in the order in which it counts. */
export function snowFrom(site: Site, weather: WeatherYear): 'depth' | 'precipitation' | 'snow.days' | null {
  if (hasSnowData(weather)) return 'depth';
  if (weather.precipitationMm) return 'precipitation';
  return site.snow.days ? 'snow.days' : null;
}

/** The same winter every time. */
const snowSeed = 1;
