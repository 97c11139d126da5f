import { bench } from 'vitest';
import { clearSkyWm2 } from './clear-sky.js';
import { planeYear } from './plane-year.js';
import { compileSkyline } from './skyline.js';
import { splitGlobal } from './split-global.js';
import { sunYear } from './sun-year.js';

// Run by hand: npx vitest bench packages/irradiance. Invented place and sky; the same numbers every run.
const place = { latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 };
const sun = sunYear(place);
const ghiWm2 = sun.meanCosZenith.map((cos, h) => clearSkyWm2(cos) * (0.2 + 0.08 * ((h * 37) % 11)));
const irradiance = { ghiWm2, ...splitGlobal(ghiWm2, sun) };
const albedo = new Float64Array(8760).fill(0.2);
const skyModel = 'perez';
const still = { tiltDeg: new Float64Array(35040).fill(60), azimuthDeg: new Float64Array(35040).fill(180) };
const moving = { tiltDeg: sun.zenithDeg.map((zenith) => Math.min(90, zenith)), azimuthDeg: sun.azimuthDeg };
const woods = () => compileSkyline([{ fromDeg: 70, toDeg: 125, topM: 16, distanceM: 40 }], undefined, 4);
const skyline = woods();

bench('sunYear', () => {
  sunYear(place);
});

bench('splitGlobal', () => {
  splitGlobal(ghiWm2, sun);
});

bench('planeYear, fixed, open', () => {
  planeYear(sun, irradiance, still, { skyModel, albedo });
});

bench('planeYear, fixed, behind a skyline', () => {
  planeYear(sun, irradiance, still, { skyModel, albedo, skyline });
});

bench('planeYear, two axes, behind a skyline', () => {
  planeYear(sun, irradiance, moving, { skyModel, albedo, skyline });
});

bench('planeYear, two axes, first time behind a skyline', () => {
  planeYear(sun, irradiance, moving, { skyModel, albedo, skyline: woods() });
});
