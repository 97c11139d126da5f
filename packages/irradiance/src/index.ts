export { airMass } from './air-mass.js';
export { clearSkyWm2 } from './clear-sky.js';
export type { CompiledSkyline, SkyColumns } from './compiled-skyline.js';
export { dailyDiffuseFraction, diffuseFraction, monthlyDiffuseFraction } from './diffuse-fraction.js';
export {
  declinationDeg,
  distanceFactor,
  extraterrestrialDayWhM2,
  extraterrestrialHourWhM2,
  sunsetHourAngleDeg,
} from './extraterrestrial.js';
export { glassFactor, groundGlassFactor, skyGlassFactor } from './glass.js';
export type { HorizonPoint } from './horizon.js';
export { cosIncidence } from './incidence.js';
export type { LeafSeason, Obstacle } from './obstacle.js';
export { perezSkyWm2 } from './perez-sky.js';
export type { GroundAndSky, Irradiance, PlaneSettings, Pointing } from './plane-input.js';
export { type PlaneView, planeView } from './plane-view.js';
export { type PlaneYear, planeYear, planeYearOf } from './plane-year.js';
export { groundReflectedWm2, hayDaviesSkyWm2, isotropicSkyWm2, type SkyModel } from './sky-models.js';
export { compileSkyline, usualLeaves } from './skyline.js';
export { splitGlobal } from './split-global.js';
export { type Place, pointsPerHour, type SunYear, sunYear } from './sun-year.js';
