import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import type { CompiledSkyline } from './compiled-skyline.js';
import { glassFactor, groundGlassFactor, skyGlassFactor } from './glass.js';
import type { Pointing } from './plane-input.js';
import { hiddenSkyShareOf } from './sky-columns.js';
import { clearShare } from './skyline.js';
import { pointsPerHour, type SunYear } from './sun-year.js';

/** A plane as it stands, with what follows from its tilt and direction alone: worked out again only when it moves. */
export interface StandingPlane {
  tiltDeg: number;
  azimuthDeg: number;
  cosTilt: number;
  sinTilt: number;
  skyGlass: number;
  groundGlass: number;
  /** Share of the sky before the plane that no obstacle hides. */
  freeSky: number;
  leafOn: boolean;
}

/** A plane that has not been pointed yet. */
export const unpointedPlane = (): StandingPlane => ({
  tiltDeg: Number.NaN,
  azimuthDeg: Number.NaN,
  cosTilt: Number.NaN,
  sinTilt: Number.NaN,
  skyGlass: Number.NaN,
  groundGlass: Number.NaN,
  freeSky: 1,
  leafOn: false,
});

function point(
  plane: StandingPlane,
  tiltDeg: number,
  azimuthDeg: number,
  skyline: CompiledSkyline | undefined,
  leafOn: boolean,
): void {
  if (tiltDeg !== plane.tiltDeg) {
    plane.tiltDeg = tiltDeg;
    plane.cosTilt = Math.cos(tiltDeg * rad);
    plane.sinTilt = Math.sin(tiltDeg * rad);
    plane.skyGlass = skyGlassFactor(tiltDeg);
    plane.groundGlass = groundGlassFactor(tiltDeg);
  }
  plane.azimuthDeg = azimuthDeg;
  plane.leafOn = leafOn;
  if (skyline) plane.freeSky = 1 - hiddenSkyShareOf(skyline, tiltDeg, azimuthDeg, leafOn);
}

/**
 * What the points of each hour that count see, summed: cosines of the beam's incidence and views of sky and ground, as
 * they are, as the skyline leaves them (kept) and as the glass then lets them through.
 */
export interface PointSums {
  cos: Float64Array;
  cosKept: Float64Array;
  cosThroughGlass: Float64Array;
  view: Float64Array;
  viewKept: Float64Array;
  viewThroughGlass: Float64Array;
  /** Sines of the tilt, to which the light of the horizon band goes. */
  sin: Float64Array;
  ground: Float64Array;
  groundThroughGlass: Float64Array;
}

export const noSums = (): PointSums => ({
  cos: new Float64Array(hoursPerYear),
  cosKept: new Float64Array(hoursPerYear),
  cosThroughGlass: new Float64Array(hoursPerYear),
  view: new Float64Array(hoursPerYear),
  viewKept: new Float64Array(hoursPerYear),
  viewThroughGlass: new Float64Array(hoursPerYear),
  sin: new Float64Array(hoursPerYear),
  ground: new Float64Array(hoursPerYear),
  groundThroughGlass: new Float64Array(hoursPerYear),
});

/** Sums over the points of an hour that count: those with the sun up, or all four in twilight. */
export function sumPoints(
  sums: PointSums,
  plane: StandingPlane,
  h: number,
  sun: SunYear,
  pointing: Pointing,
  skyline: CompiledSkyline | undefined,
  leafOn: boolean,
): void {
  const { zenithDeg, azimuthDeg: sunAzimuthDeg, cosZenith, upShare } = sun;
  const { tiltDeg, azimuthDeg } = pointing;
  const isUp = upShare[h]! > 0;
  let cosSum = 0;
  let cosKept = 0;
  let cosThroughGlass = 0;
  let viewSum = 0;
  let viewKept = 0;
  let viewThroughGlass = 0;
  let sinSum = 0;
  let groundView = 0;
  let groundThroughGlass = 0;
  for (let i = h * pointsPerHour; i < (h + 1) * pointsPerHour; i++) {
    const cosZ = cosZenith[i]!;
    if (isUp && cosZ === 0) continue;
    const tilt = tiltDeg[i]!;
    const azimuth = azimuthDeg[i]!;
    if (tilt !== plane.tiltDeg || azimuth !== plane.azimuthDeg || leafOn !== plane.leafOn) {
      point(plane, tilt, azimuth, skyline, leafOn);
    }
    const { cosTilt, sinTilt, freeSky } = plane;
    const view = (1 + cosTilt) / 2;
    viewSum += view;
    sinSum += sinTilt;
    viewKept += view * freeSky;
    viewThroughGlass += view * freeSky * plane.skyGlass;
    groundView += 1 - view;
    groundThroughGlass += (1 - view) * plane.groundGlass;
    if (cosZ === 0) continue;
    const turnedBy = (sunAzimuthDeg[i]! - azimuth) * rad;
    const cos = cosZ * cosTilt + Math.sqrt(1 - cosZ * cosZ) * sinTilt * Math.cos(turnedBy);
    if (cos <= 0) continue;
    const clear = skyline ? clearShare(skyline, sunAzimuthDeg[i]!, 90 - zenithDeg[i]!, leafOn) : 1;
    cosSum += cos;
    cosKept += cos * clear;
    cosThroughGlass += cos * clear * glassFactor(cos);
  }
  sums.cos[h] = cosSum;
  sums.cosKept[h] = cosKept;
  sums.cosThroughGlass[h] = cosThroughGlass;
  sums.view[h] = viewSum;
  sums.viewKept[h] = viewKept;
  sums.viewThroughGlass[h] = viewThroughGlass;
  sums.sin[h] = sinSum;
  sums.ground[h] = groundView;
  sums.groundThroughGlass[h] = groundThroughGlass;
}
