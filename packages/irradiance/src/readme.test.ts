import { expect, test } from 'vitest';
import { clearSkyWm2, compileSkyline, planeYear, splitGlobal, sunYear } from './index.js';

test('the example of the README gives the results stated there', () => {
  const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
  const ghiWm2 = sun.meanCosZenith.map(clearSkyWm2);
  const irradiance = { ghiWm2, ...splitGlobal(ghiWm2, sun) };
  const skyline = compileSkyline([{ fromDeg: 70, toDeg: 125, topM: 16, distanceM: 40 }], undefined, 4);
  const pointing = { tiltDeg: new Float64Array(35040).fill(60), azimuthDeg: new Float64Array(35040).fill(180) };
  const albedo = new Float64Array(8760).fill(0.2);
  const plane = planeYear(sun, irradiance, pointing, { skyModel: 'perez', albedo, skyline });
  const kWhM2 = (hours: Float64Array) => hours.reduce((sum, value) => sum + value, 0) / 1000;
  expect(sun.zenithDeg[12 * 4]).toBeCloseTo(69.8, 1);
  expect(kWhM2(plane.planeWm2)).toBeCloseTo(2342, 0);
  expect(kWhM2(plane.skylineLossWm2)).toBeCloseTo(33.7, 1);
  expect(kWhM2(plane.glassLossWm2)).toBeCloseTo(60.8, 1);
  expect(kWhM2(plane.effectiveWm2)).toBeCloseTo(2247.7, 1);
});
