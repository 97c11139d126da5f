import { hoursPerYear, mustBeWhole, mustHold, mustLie, radiansPerDegree as rad } from '@wintergap/ground';
import { caughtShare, checkCatch, type SnowCatch, usualCatch } from './snow-catch.js';
import { snowFalls } from './snow-falls.js';

/** Snow slides when the air is warmer than plane irradiance over this, W/m2/K. Marion et al. (2013). */
const slideWm2PerK = -80;
/** Share of the slant height that slides in an hour on an upright plane. Marion et al. (2013). */
const slidePerH = 0.197;

/** Nobody sweeps before or after these hours of the clock, however light it is. Common practice, no source. */
const wakingFrom = 7;
const wakingTo = 20;

/** Somebody who clears the plane. */
export interface Clearing {
  /**
   * Hours by the clock from the last new snow within which the plane is clear. It is cleared in the last daylight within
   * them; where it is dark all that time, at first light.
   */
  withinH: number;
}

export interface SnowCoverInput {
  /** Depth of the snow on the ground in each hour, m. */
  snowDepthM: Float64Array;
  /** Irradiance of the plane as if it were bare, W/m2. */
  planeWm2: Float64Array;
  /** Tilt of the plane in each hour, degrees. */
  tiltDeg: Float64Array;
  airC: Float64Array;
  /** Which tilts a fall covers; `usualCatch` unless given. */
  caught?: SnowCatch | undefined;
  clearing?: Clearing | undefined;
}

/**
 * Share of the plane's slant height under snow in each hour, 0 to 1.
 *
 * Source: Marion, Schaefer, Caine & Sanchez (2013), Solar Energy 97, 112-121. New snow covers the plane (`snowFalls`); in
 * an hour with air warmer than plane irradiance / (-80 W/m2/K) the covered share falls by 0.197 sin(tilt). The model was
 * validated on fixed planes of usual tilts only. Added here: steep planes are covered in part (`caughtShare`); once the
 * ground is bare so is the plane, which ends the winter of planes too flat to shed. The year begins with the snow it
 * ends with.
 *
 * @throws OutOfRangeError when an array does not hold 8760 numbers, or catch or clearing makes no sense
 */
export function snowCover(input: SnowCoverInput): Float64Array {
  const { snowDepthM, planeWm2, tiltDeg, airC, caught = usualCatch, clearing } = input;
  mustHold('snowDepthM', snowDepthM, hoursPerYear, 0, 1000);
  mustHold('planeWm2', planeWm2, hoursPerYear, 0, 10_000);
  mustHold('tiltDeg', tiltDeg, hoursPerYear, 0, 90);
  mustHold('airC', airC, hoursPerYear, -100, 100);
  checkCatch(caught);
  if (clearing) mustLie('withinH of the clearing', clearing.withinH, 0, Number.POSITIVE_INFINITY);
  const withinH = clearing ? clearing.withinH : Number.POSITIVE_INFINITY;
  const untilNextH = hoursToNextDaylight(planeWm2);
  const falls = snowFalls(snowDepthM);
  const share = new Float64Array(hoursPerYear);
  let covered = 0;
  // Hours by the clock that the snow has lain when an hour begins.
  let lainH = 0;
  for (let pass = 0; pass < 2; pass++) {
    for (let h = 0; h < hoursPerYear; h++) {
      if (falls[h] === 1) {
        covered = Math.max(covered, caughtShare(tiltDeg[h]!, caught));
        lainH = 0;
      } else if (covered > 0) {
        if (airC[h]! > planeWm2[h]! / slideWm2PerK) {
          covered = Math.max(0, covered - slidePerH * Math.sin(tiltDeg[h]! * rad));
        }
        // The next daylight would be too late, or this is the first after a night that was.
        const swept = untilNextH[h]! > 0 && lainH + untilNextH[h]! > withinH;
        if (swept || !(snowDepthM[h]! > 0)) covered = 0;
        lainH++;
      }
      share[h] = covered;
    }
  }
  return share;
}

/**
 * For each hour in which somebody may sweep, by daylight and awake, the hours until the next such; 0 for the others, and
 * in the single one of a year.
 */
function hoursToNextDaylight(planeWm2: Float64Array): Float64Array {
  const untilNextH = new Float64Array(hoursPerYear);
  let next = -1;
  for (let i = 2 * hoursPerYear - 1; i >= 0; i--) {
    const h = i % hoursPerYear;
    if (!(planeWm2[h]! > 0) || h % 24 < wakingFrom || h % 24 >= wakingTo) continue;
    untilNextH[h] = next < 0 ? hoursPerYear : next - i;
    next = i;
  }
  return untilNextH;
}

/**
 * Share of the output lost, 0 to 1, when a string gives nothing while any of its modules is touched by snow.
 *
 * Source: Marion et al. (2013): the covered share rounded up to whole strings.
 *
 * @param rows strings that lie above each other across the slant height, 1 or more
 */
export function snowLossByString(covered: Float64Array, rows: number): Float64Array {
  mustBeWhole('rows', rows, 1, Number.POSITIVE_INFINITY);
  // What is left of a subtraction must not round up to a string.
  return covered.map((share) => (share > 1e-9 ? Math.ceil(share * rows - 1e-9) / rows : 0));
}
