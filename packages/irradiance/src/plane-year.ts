import { hoursPerYear } from '@wintergap/ground';
import { partHour } from './hour-of-light.js';
import { lowestAureoleCos, perezBrightness } from './perez-sky.js';
import { checkLight } from './plane-check.js';
import type { GroundAndSky, Irradiance, PlaneSettings, Pointing } from './plane-input.js';
import type { PointSums } from './plane-points.js';
import { type PlaneView, planeView } from './plane-view.js';
import type { SkyModel } from './sky-models.js';
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
  { skyline, ...settings }: PlaneSettings,
): PlaneYear {
  return planeYearOf(planeView(sun, pointing, skyline), irradiance, settings);
}

/**
 * As `planeYear`, for a plane whose view is at hand: other weather years of the same plane share it.
 *
 * @throws OutOfRangeError when an array has a wrong length or a value outside its range
 */
export function planeYearOf(view: PlaneView, irradiance: Irradiance, settings: GroundAndSky): PlaneYear {
  checkLight(irradiance, settings);
  const { ghiWm2, dniWm2, dhiWm2 } = irradiance;
  const { skyModel, albedo } = settings;
  const { upShare, meanCosZenith, extraterrestrialNormalWm2 } = view.sun;
  const year = darkPlaneYear();
  const light = new Float64Array(2);
  const brightness = new Float64Array(2);

  for (let h = 0; h < hoursPerYear; h++) {
    const ghi = ghiWm2[h]!;
    if (ghi <= 0) continue;
    const up = upShare[h]!;
    partHour(ghi, dniWm2[h]!, dhiWm2[h]!, up, meanCosZenith[h]!, extraterrestrialNormalWm2[h]!, light);
    view.look(h);
    const meanCosUp = up > 0 ? meanCosZenith[h]! / up : 0;
    skyBrightness(skyModel, view, h, light, meanCosUp, brightness);
    postHour(year, h, view.sums, light, brightness, meanCosUp, up, ghi * albedo[h]!);
  }
  return year;
}

const darkPlaneYear = (): PlaneYear => ({
  planeWm2: new Float64Array(hoursPerYear),
  beamWm2: new Float64Array(hoursPerYear),
  skyWm2: new Float64Array(hoursPerYear),
  groundWm2: new Float64Array(hoursPerYear),
  skylineLossWm2: new Float64Array(hoursPerYear),
  glassLossWm2: new Float64Array(hoursPerYear),
  effectiveWm2: new Float64Array(hoursPerYear),
});

/** Writes how bright the aureole and the horizon are, as shares of the diffuse light, into `brightness`. */
function skyBrightness(
  skyModel: SkyModel,
  view: PlaneView,
  h: number,
  light: Float64Array,
  meanCosUp: number,
  brightness: Float64Array,
): void {
  const beamWm2 = light[0]!;
  const diffuseWm2 = light[1]!;
  const normalWm2 = view.sun.extraterrestrialNormalWm2[h]!;
  brightness[0] = 0;
  brightness[1] = 0;
  if (skyModel === 'isotropic' || diffuseWm2 <= 0 || meanCosUp <= 0) return;
  if (skyModel === 'perez') {
    // Of the same part of the hour as beam and air mass, and no more than comes from the sun: a file whose clock is a
    // little off has light before the sun is up, which no sun surrounds.
    const fromSunWm2 = Math.min(diffuseWm2 / view.sun.upShare[h]!, normalWm2 * meanCosUp);
    perezBrightness(fromSunWm2, beamWm2, normalWm2, view.zenithDeg[h]!, view.airMass[h]!, brightness);
  } else brightness[0] = Math.min(1, beamWm2 / normalWm2);
  brightness[0]! *= Math.min(1, meanCosUp / lowestAureoleCos);
}

/** Puts an hour's light together: beam and aureole by the cosines summed, dome and ground by the views. */
function postHour(
  year: PlaneYear,
  h: number,
  sums: PointSums,
  light: Float64Array,
  brightness: Float64Array,
  meanCosUp: number,
  up: number,
  reflectedWm2: number,
): void {
  const cos = sums.cos[h]!;
  const cosKept = sums.cosKept[h]!;
  const viewSum = sums.view[h]!;
  const viewKept = sums.viewKept[h]!;
  const groundView = sums.ground[h]!;
  const beam = light[0]!;
  const diffuse = light[1]!;
  const around = brightness[0]!;
  const points = up > 0 ? up * pointsPerHour : pointsPerHour;
  // W/m2 for each unit of the sums.
  const direct = beam / pointsPerHour + (meanCosUp > 0 ? (diffuse * around) / (meanCosUp * points) : 0);
  const dome = Math.max(0, (diffuse * ((1 - around) * viewSum + brightness[1]! * sums.sin[h]!)) / points);
  const domeShare = viewSum > 0 ? dome / viewSum : 0;
  const fromGround = reflectedWm2 / points;

  const beamWm2 = (beam / pointsPerHour) * cos;
  const skyWm2 = (direct - beam / pointsPerHour) * cos + dome;
  const groundWm2 = fromGround * groundView;
  const planeWm2 = beamWm2 + skyWm2 + groundWm2;
  const skylineLossWm2 = direct * (cos - cosKept) + domeShare * (viewSum - viewKept);
  const glassLossWm2 =
    direct * (cosKept - sums.cosThroughGlass[h]!) +
    domeShare * (viewKept - sums.viewThroughGlass[h]!) +
    fromGround * (groundView - sums.groundThroughGlass[h]!);
  year.beamWm2[h] = beamWm2;
  year.skyWm2[h] = skyWm2;
  year.groundWm2[h] = groundWm2;
  year.planeWm2[h] = planeWm2;
  year.skylineLossWm2[h] = skylineLossWm2;
  year.glassLossWm2[h] = glassLossWm2;
  year.effectiveWm2[h] = Math.max(0, planeWm2 - skylineLossWm2 - glassLossWm2);
}
