import type { CompiledSkyline } from './compiled-skyline.js';
import type { SkyModel } from './sky-models.js';

/** Where a plane points, at each of the year's 8760 x 4 points. */
export interface Pointing {
  /** From horizontal, 0 to 90 degrees. */
  tiltDeg: Float64Array;
  /** Degrees clockwise from north. */
  azimuthDeg: Float64Array;
}

/** Mean irradiance of each hour, W/m2: global and diffuse on the horizontal, beam on a plane facing the sun. */
export interface Irradiance {
  ghiWm2: Float64Array;
  dniWm2: Float64Array;
  dhiWm2: Float64Array;
}

/** How the sky's light is spread, and the ground's. */
export interface GroundAndSky {
  skyModel: SkyModel;
  /** Share of the light that the ground throws back in each hour, 0 to 1. */
  albedo: Float64Array;
}

export interface PlaneSettings extends GroundAndSky {
  /** Open to the horizon unless given. */
  skyline?: CompiledSkyline | undefined;
}
