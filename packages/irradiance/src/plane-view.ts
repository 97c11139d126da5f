import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import { airMass } from './air-mass.js';
import type { CompiledSkyline } from './compiled-skyline.js';
import { checkPointing } from './plane-check.js';
import type { Pointing } from './plane-input.js';
import { noSums, type PointSums, type StandingPlane, sumPoints, unpointedPlane } from './plane-points.js';
import { leavesAreOn } from './skyline.js';
import type { SunYear } from './sun-year.js';

/**
 * What a plane sees of sun, sky and ground in each hour, whatever the weather: worked out when an hour is first looked
 * at, and kept for the other weather years of the same place and plane.
 */
export interface PlaneView {
  readonly sun: SunYear;
  readonly sums: PointSums;
  /** Of the hour's mean cosine while the sun is up: the zenith angle that has it, degrees, and the air mass there. */
  readonly zenithDeg: Float64Array;
  readonly airMass: Float64Array;
  /** Works out an hour unless that was done. */
  look(h: number): void;
}

/**
 * The view of a plane.
 *
 * @param skyline open to the horizon when left out
 * @throws OutOfRangeError when the pointing has a wrong length or an angle outside its range
 */
export function planeView(sun: SunYear, pointing: Pointing, skyline?: CompiledSkyline | undefined): PlaneView {
  checkPointing(pointing);
  const plane: StandingPlane = unpointedPlane();
  const seen = new Uint8Array(hoursPerYear);
  const view: PlaneView = {
    sun,
    sums: noSums(),
    zenithDeg: new Float64Array(hoursPerYear),
    airMass: new Float64Array(hoursPerYear),
    look(h) {
      if (seen[h] === 1) return;
      seen[h] = 1;
      const leafOn = skyline !== undefined && leavesAreOn(skyline.leaves, Math.floor(h / 24));
      sumPoints(view.sums, plane, h, sun, pointing, skyline, leafOn);
      const up = sun.upShare[h]!;
      if (up === 0) return;
      const zenithDeg = Math.acos(sun.meanCosZenith[h]! / up) / rad;
      view.zenithDeg[h] = zenithDeg;
      view.airMass[h] = airMass(zenithDeg);
    },
  };
  return view;
}
