import { hoursPerYear, radiansPerDegree as rad } from '@wintergap/ground';
import { glassFactor, groundGlassFactor, skyGlassFactor } from './glass.js';
import { partHour } from './hour-of-light.js';
import { lowestAureoleCos, perezBrightness } from './perez-sky.js';
import { checkPlane } from './plane-check.js';
import type { Irradiance, PlaneSettings, Pointing } from './plane-input.js';
import { hiddenSkyShareOf } from './sky-columns.js';
import { clearShare, leavesAreOn } from './skyline.js';
import { pointsPerHour, type SunYear } from './sun-year.js';

/** Irradiance of a plane in each hour, W/m2, mean of the hour. effective = plane - skyline loss - glass loss. */
export interface PlaneYear {
  /** Plane-of-array irradiance as in IEC 61724-1, open to the horizon, before glass: beam + sky + ground. */
  planeWm2: Float64Array;
  beamWm2: Float64Array;
  skyWm2: Float64Array;
  groundWm2: Float64Array;
  /** Light that obstacles keep from the plane. */
  skylineLossWm2: Float64Array;
  /** Light that arrives but that the glass throws back, over what it does to light that falls on it straight. */
  glassLossWm2: Float64Array;
  /** What counts for the cells, as if it fell straight on the glass. */
  effectiveWm2: Float64Array;
}

/**
 * Light on a plane through a year.
 *
 * Beam and the aureole around the sun go by the sun's direction at each point of the hour; the rest of the sky, its
 * brighter or darker horizon included, and the ground by the plane's tilt alone. While the sun is lower than 5 degrees
 * the part of the aureole that the models leave out stays in the sky's dome, so a horizontal plane always gets its
 * global irradiance. The ground is lit as if no obstacles stood on it.
 *
 * @throws OutOfRangeError when an array has a wrong length or a value outside its range
 */
export function planeYear(
  sun: SunYear,
  irradiance: Irradiance,
  pointing: Pointing,
  settings: PlaneSettings,
): PlaneYear {
  checkPlane(irradiance, pointing, settings);
  const { ghiWm2, dniWm2, dhiWm2 } = irradiance;
  const { skyModel, albedo, skyline } = settings;
  const { zenithDeg, azimuthDeg: sunAzimuthDeg, cosZenith, upShare, meanCosZenith, extraterrestrialNormalWm2 } = sun;
  const { tiltDeg, azimuthDeg } = pointing;

  const beamWm2 = new Float64Array(hoursPerYear);
  const skyWm2 = new Float64Array(hoursPerYear);
  const groundWm2 = new Float64Array(hoursPerYear);
  const planeWm2 = new Float64Array(hoursPerYear);
  const skylineLossWm2 = new Float64Array(hoursPerYear);
  const glassLossWm2 = new Float64Array(hoursPerYear);
  const effectiveWm2 = new Float64Array(hoursPerYear);
  const light = new Float64Array(2);
  const brightness = new Float64Array(2);

  // Kept while the plane stays as it is.
  let tilt = Number.NaN;
  let azimuth = Number.NaN;
  let cosTilt = 1;
  let sinTilt = 0;
  let skyGlass = 1;
  let groundGlass = 1;
  let freeSky = 1;
  let freeSkyLeaves = false;

  for (let h = 0; h < hoursPerYear; h++) {
    const ghi = ghiWm2[h]!;
    if (ghi <= 0) continue;
    const up = upShare[h]!;
    const normal = extraterrestrialNormalWm2[h]!;
    partHour(ghi, dniWm2[h]!, dhiWm2[h]!, up, meanCosZenith[h]!, normal, light);
    const beam = light[0]!;
    const diffuse = light[1]!;
    const leafOn = skyline !== undefined && leavesAreOn(skyline.leaves, Math.floor(h / 24));

    // Sums over the points that count: those with the sun up, or all four in twilight.
    let cosSum = 0;
    let cosKept = 0;
    let cosThroughGlass = 0;
    let viewSum = 0;
    let sinSum = 0;
    let viewKept = 0;
    let viewThroughGlass = 0;
    let groundView = 0;
    let groundThroughGlass = 0;
    for (let i = h * pointsPerHour; i < (h + 1) * pointsPerHour; i++) {
      const cosZ = cosZenith[i]!;
      if (up > 0 && cosZ === 0) continue;
      const turned = azimuthDeg[i]! !== azimuth;
      if (tiltDeg[i]! !== tilt || turned || leafOn !== freeSkyLeaves) {
        if (tiltDeg[i]! !== tilt) {
          tilt = tiltDeg[i]!;
          cosTilt = Math.cos(tilt * rad);
          sinTilt = Math.sin(tilt * rad);
          skyGlass = skyGlassFactor(tilt);
          groundGlass = groundGlassFactor(tilt);
        }
        azimuth = azimuthDeg[i]!;
        freeSkyLeaves = leafOn;
        if (skyline) freeSky = 1 - hiddenSkyShareOf(skyline, tilt, azimuth, leafOn);
      }
      const view = (1 + cosTilt) / 2;
      viewSum += view;
      sinSum += sinTilt;
      viewKept += view * freeSky;
      viewThroughGlass += view * freeSky * skyGlass;
      groundView += 1 - view;
      groundThroughGlass += (1 - view) * groundGlass;
      if (cosZ === 0) continue;
      const cos = cosZ * cosTilt + Math.sqrt(1 - cosZ * cosZ) * sinTilt * Math.cos((sunAzimuthDeg[i]! - azimuth) * rad);
      if (cos <= 0) continue;
      const clear = skyline ? clearShare(skyline, sunAzimuthDeg[i]!, 90 - zenithDeg[i]!, leafOn) : 1;
      cosSum += cos;
      cosKept += cos * clear;
      cosThroughGlass += cos * clear * glassFactor(cos);
    }

    const points = up > 0 ? up * pointsPerHour : pointsPerHour;
    const meanCosUp = up > 0 ? meanCosZenith[h]! / up : 0;
    let around = 0;
    let horizon = 0;
    if (skyModel !== 'isotropic' && diffuse > 0 && meanCosUp > 0) {
      if (skyModel === 'perez') {
        perezBrightness(diffuse, beam, normal, Math.acos(meanCosUp) / rad, brightness);
        around = brightness[0]!;
        horizon = brightness[1]!;
      } else around = Math.min(1, beam / normal);
      around *= Math.min(1, meanCosUp / lowestAureoleCos);
    }
    // W/m2 for each unit of the sums above.
    const direct = beam / pointsPerHour + (meanCosUp > 0 ? (diffuse * around) / (meanCosUp * points) : 0);
    const dome = Math.max(0, (diffuse * ((1 - around) * viewSum + horizon * sinSum)) / points);
    const domeShare = viewSum > 0 ? dome / viewSum : 0;
    const fromGround = (ghi * albedo[h]!) / points;

    beamWm2[h] = (beam / pointsPerHour) * cosSum;
    skyWm2[h] = (direct - beam / pointsPerHour) * cosSum + dome;
    groundWm2[h] = fromGround * groundView;
    const plane = beamWm2[h]! + skyWm2[h]! + groundWm2[h]!;
    const skylineLoss = direct * (cosSum - cosKept) + domeShare * (viewSum - viewKept);
    const glassLoss =
      direct * (cosKept - cosThroughGlass) +
      domeShare * (viewKept - viewThroughGlass) +
      fromGround * (groundView - groundThroughGlass);
    planeWm2[h] = plane;
    skylineLossWm2[h] = skylineLoss;
    glassLossWm2[h] = glassLoss;
    effectiveWm2[h] = Math.max(0, plane - skylineLoss - glassLoss);
  }
  return { planeWm2, beamWm2, skyWm2, groundWm2, skylineLossWm2, glassLossWm2, effectiveWm2 };
}
