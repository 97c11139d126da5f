import { sunYear } from '@wintergap/irradiance';
import { expect, test } from 'vitest';
import { driveLoadW, hourlyTiltDeg, type Mount, pointing, snowCover } from './index.js';

test('the example of the README gives the results stated there', () => {
  const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
  const tilts = [
    { fromDay: 273, tiltDeg: 68 },
    { fromDay: 90, tiltDeg: 35 },
  ];
  const pole: Mount = { kind: 'pole', tilts, turnDeg: 220, drive: { kind: 'while-turning', powerW: 40 } };
  const where = pointing(pole, sun);
  expect(where.azimuthDeg[(171 * 24 + 8) * 4]).toBeCloseTo(93.9, 1);
  expect(driveLoadW(pole, sun, where)!.reduce((a, b) => a + b, 0)).toBeCloseTo(14093, 0);

  const covered = snowCover({
    snowDepthM: new Float64Array(8760).fill(0.3, 100, 1000),
    planeWm2: new Float64Array(8760).fill(300),
    tiltDeg: hourlyTiltDeg(where),
    airC: new Float64Array(8760),
  });
  expect(covered[100]).toBeCloseTo(0.34, 3);
  expect(covered[101]).toBeCloseTo(0.157, 3);
  expect(covered[102]).toBe(0);
});
