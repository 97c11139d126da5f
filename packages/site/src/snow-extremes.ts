import type { Site } from './document/origin.js';

/** A design in the two extremes of what snow does to steep planes. */
export interface SnowExtremes {
  /** Snow never lies on an array; what lies on the ground stays, and the light it throws. */
  none: Site;
  /** Every fall covers every array whole, upright ones too, and slides by Marion's rule alone. */
  full: Site;
}

/**
 * The same design with arrays that snow never covers, and with arrays that it always covers whole: what its own snow
 * makes of the year lies between the two. Sweeping, where the design has any, stays in both.
 */
export function snowExtremes(design: Site): SnowExtremes {
  return {
    none: { ...design, snow: { ...design.snow, cover: 'none' } },
    full: { ...design, snow: { ...design.snow, cover: 'full' } },
  };
}
