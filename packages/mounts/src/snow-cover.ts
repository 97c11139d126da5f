import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import { checkHours } from './hours-check.js';
import { snowFalls } from './snow-falls.js';

/** Snow slides when the air is warmer than plane irradiance over this, W/m2/K. Marion et al. (2013). */
const slideWm2PerK = -80;
/** Share of the slant height that slides in an hour on an upright plane. Marion et al. (2013). */
const slidePerH = 0.197;

/** Up to this tilt a fall covers a plane whole, as in the paper's data; an upright plane catches nothing. */
const wholeCoverToDeg = 60;

/**
 * Share of the slant height that a fall covers. Marion et al. (2013) know planes of usual tilts only, all covered whole;
 * steeper ones shed dry snow as it falls, in proportion between 60 and 90 degrees here: common practice, no source.
 */
function coveredByFall(tiltDeg: number): number {
  return Math.min(1, Math.max(0, (90 - tiltDeg) / (90 - wholeCoverToDeg)));
}

/** Somebody who clears the plane. */
export interface Clearing {
  /** Hours of the waking day that pass after the last new snow before the plane is clear. */
  withinH: number;
  /** The waking day, hours of the clock; 8 to 17 unless given. */
  fromHour?: number | undefined;
  toHour?: number | undefined;
}

export interface SnowCoverInput {
  /** Depth of the snow on the ground in each hour, m. */
  snowDepthM: Float64Array;
  /** Irradiance of the plane as if it were bare, W/m2. */
  planeWm2: Float64Array;
  /** Tilt of the plane in each hour, degrees. */
  tiltDeg: Float64Array;
  airC: Float64Array;
  clearing?: Clearing | undefined;
}

/**
 * Share of the plane's slant height under snow in each hour, 0 to 1.
 *
 * Source: Marion, Schaefer, Caine & Sanchez (2013), Solar Energy 97, 112-121. New snow covers the plane whole
 * (`snowFalls`); in an hour with air warmer than plane irradiance / (-80 W/m2/K) the covered share falls by 0.197
 * sin(tilt). The model was validated on fixed planes only. Added here: planes steeper than 60
 * degrees are covered in part (`coveredByFall`); once the ground is bare so is the plane, which
 * ends the winter of planes too flat to shed. The year begins with the snow it ends with.
 *
 * @throws RangeError when an array does not have 8760 hours, or a clearing makes no sense
 */
export function snowCover({ snowDepthM, planeWm2, tiltDeg, airC, clearing }: SnowCoverInput): Float64Array {
  for (const [name, values] of Object.entries({ snowDepthM, planeWm2, tiltDeg, airC })) {
    checkHours(name, values);
  }
  const { withinH, fromHour, toHour } = checkClearing(clearing);
  const falls = snowFalls(snowDepthM);
  const share = new Float64Array(hoursPerYear);
  let covered = 0;
  let wakingH = 0;
  for (let pass = 0; pass < 2; pass++) {
    for (let h = 0; h < hoursPerYear; h++) {
      if (falls[h] === 1) {
        covered = Math.max(covered, coveredByFall(tiltDeg[h]!));
        wakingH = 0;
      } else if (covered > 0) {
        const hour = h % 24;
        if (hour >= fromHour && hour < toHour) wakingH++;
        if (airC[h]! > planeWm2[h]! / slideWm2PerK) {
          covered = Math.max(0, covered - slidePerH * Math.sin(tiltDeg[h]! * rad));
        }
        if (wakingH > withinH || !(snowDepthM[h]! > 0)) covered = 0;
      }
      share[h] = covered;
    }
  }
  return share;
}

/**
 * Share of the output lost, 0 to 1, when a string gives nothing while any of its modules is touched by snow.
 *
 * Source: Marion et al. (2013): the covered share rounded up to whole strings.
 *
 * @param rows strings that lie above each other across the slant height, 1 or more
 */
export function snowLossByString(covered: Float64Array, rows: number): Float64Array {
  if (!Number.isInteger(rows) || rows < 1) throw new RangeError(`rows must be a whole number from 1 on, got ${rows}`);
  // What is left of a subtraction must not round up to a string.
  return covered.map((share) => (share > 1e-9 ? Math.ceil(share * rows - 1e-9) / rows : 0));
}

function checkClearing(clearing: Clearing | undefined): { withinH: number; fromHour: number; toHour: number } {
  if (!clearing) return { withinH: Number.POSITIVE_INFINITY, fromHour: 8, toHour: 17 };
  const { withinH, fromHour = 8, toHour = 17 } = clearing;
  if (!(withinH >= 0)) throw new RangeError(`withinH of the clearing must be 0 or more, got ${withinH}`);
  if (!(fromHour >= 0 && fromHour < toHour && toHour <= 24)) {
    throw new RangeError(`the clearing's waking day must run from 0 to 24, got ${fromHour} to ${toHour}`);
  }
  return { withinH, fromHour, toHour };
}
