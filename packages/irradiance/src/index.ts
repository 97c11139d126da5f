export { airMass } from './air-mass.js';
export { dailyDiffuseFraction, diffuseFraction, monthlyDiffuseFraction } from './diffuse-fraction.js';
export {
  declinationDeg,
  distanceFactor,
  extraterrestrialDayWhM2,
  extraterrestrialHourWhM2,
  solarConstantWm2,
  sunsetHourAngleDeg,
} from './extraterrestrial.js';
export { splitGlobal } from './split-global.js';
export { type Place, type SunYear, sunYear } from './sun-year.js';
export { hoursPerYear, pointsPerHour } from './year-grid.js';
