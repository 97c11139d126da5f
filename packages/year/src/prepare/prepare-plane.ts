import {
  type CompiledSkyline,
  compileSkyline,
  type PlaneView,
  type PlaneYear,
  planeView,
  planeYearOf,
  usualLeaves,
} from '@wintergap/irradiance';
import { driveLoadW, fullCatch, hourlyTiltDeg, pointing, type SnowCatch, snowCover } from '@wintergap/mounts';
import { fromSite, mountOf, type Site, type SiteArray } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import type { Outdoors } from './prepare-outdoors.js';
import { identityOf, type PreparedCache } from './prepared-cache.js';

/** The plane of one array through the year: where it points, what light falls on it, and the snow on it. */
export interface PreparedPlane {
  plane: PlaneYear;
  /** Share of the plane covered by snow; `null` when snow is left out or unknown. */
  snowShare: Float64Array | null;
  /** What its drive draws, W; `null` without one. */
  driveW: Float64Array | null;
}

/** The plane of the site's array number `i`. Module, wiring, controller and bank have no part in it. */
export function preparePlane(
  site: Site,
  i: number,
  weather: WeatherYear,
  outdoors: Outdoors,
  prepared: PreparedCache,
): PreparedPlane {
  const mounted = prepareMounted(site, i, weather, outdoors, prepared);
  const plane = prepareLight(site, i, weather, outdoors, mounted, prepared);
  const { snow } = site;
  return prepared.get('plane', [identityOf(plane), identityOf(mounted), identityOf(weather), snow], () => ({
    plane,
    snowShare: fromSite(site, `arrays[${i}]`, () => snowOn(site, weather, outdoors, plane, mounted.tiltDeg)),
    driveW: mounted.driveW,
  }));
}

/** How an array stands: what it sees, and its drive. The same in all weather, unless its mount gives way to wind. */
interface MountedPlane {
  view: PlaneView;
  /** Mean tilt of each hour, degrees. */
  tiltDeg: Float64Array;
  driveW: Float64Array | null;
}

function prepareMounted(
  site: Site,
  i: number,
  weather: WeatherYear,
  { sun }: Outdoors,
  prepared: PreparedCache,
): MountedPlane {
  const { skyline, horizon, leaves, place } = site;
  const array = site.arrays[i]!;
  const { mount: written, height } = array;
  const stows = 'stowAbove' in written && written.stowAbove !== undefined;
  const around = [identityOf(sun), skyline, horizon, leaves, place.latitude, stows ? identityOf(weather) : null];
  const make = (): MountedPlane =>
    fromSite(site, `arrays[${i}]`, () => {
      const { mount, where } = fromSite(site, `arrays[${i}].mount`, () => {
        const mount = mountOf(written);
        return { mount, where: pointing(mount, sun, weather.windMs) };
      });
      const obstructed = skyline.length > 0 || horizon;
      return {
        view: planeView(sun, where, obstructed ? skylineOf(site, array) : undefined),
        tiltDeg: hourlyTiltDeg(where),
        driveW: driveLoadW(mount, sun, where),
      };
    });
  const inputs = [...around, written, height];
  return stows ? prepared.get('mounted', inputs, make) : prepared.lasting('mounted', inputs, make);
}

/** The light on the plane as if it were bare. */
function prepareLight(
  site: Site,
  i: number,
  weather: WeatherYear,
  { albedo }: Outdoors,
  mounted: MountedPlane,
  prepared: PreparedCache,
): PlaneYear {
  const { glass } = site.arrays[i]!.losses;
  return prepared.get('light', [identityOf(weather), identityOf(mounted), identityOf(albedo), site.sky, glass], () =>
    fromSite(site, `arrays[${i}]`, () => {
      const behindGlass = planeYearOf(mounted.view, weather, { skyModel: site.sky, albedo });
      return glass ? behindGlass : withoutGlass(behindGlass);
    }),
  );
}

function snowOn(
  { snow }: Site,
  { airC }: WeatherYear,
  { snowDepthM }: Outdoors,
  { planeWm2 }: PlaneYear,
  tiltDeg: Float64Array,
): Float64Array | null {
  if (snow.cover === 'none' || !snowDepthM) return null;
  return snowCover({
    snowDepthM,
    planeWm2,
    tiltDeg,
    airC,
    caught: snowCatchOf(snow),
    ...(snow.clearing && { clearing: { withinH: snow.clearing.within } }),
  });
}

/** The site file's experience of snow on steep planes in the words of the mounts package. */
const snowCatchOf = ({ cover, wholeUpTo, bareFrom }: Site['snow']): SnowCatch =>
  cover === 'full' ? fullCatch : { wholeUpToDeg: wholeUpTo, bareFromDeg: bareFrom };

/** The same light as if the glass let all of it through. */
function withoutGlass(plane: PlaneYear): PlaneYear {
  const { effectiveWm2, glassLossWm2 } = plane;
  return {
    ...plane,
    effectiveWm2: effectiveWm2.map((wm2, h) => wm2 + glassLossWm2[h]!),
    glassLossWm2: new Float64Array(glassLossWm2.length),
  };
}

/** What stands between the sun and an array at its height above the ground. */
function skylineOf({ skyline, horizon, leaves, place }: Site, { height }: SiteArray): CompiledSkyline {
  return compileSkyline(
    skyline.map(({ from, to, top, distance, clear }) => ({
      fromDeg: from,
      toDeg: to,
      topM: top,
      distanceM: distance,
      clear,
    })),
    horizon?.map(({ azimuth, elevation }) => ({ azimuthDeg: azimuth, elevationDeg: elevation })),
    height,
    leaves ? { onDay: leaves.on, offDay: leaves.off } : usualLeaves(place.latitude),
  );
}
