import fc from 'fast-check';
import { expect, test } from 'vitest';
import { splitGlobal } from './split-global.js';
import { sunYear } from './sun-year.js';

const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });

test('every hour closes, whatever the global irradiance', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1500 }), fc.nat(8759), (most, seed) => {
      const ghiWm2 = Float64Array.from({ length: 8760 }, (_, h) => (most * ((h * 7919 + seed) % 1000)) / 999);
      const { dniWm2, dhiWm2 } = splitGlobal(ghiWm2, sun);
      for (let h = 0; h < 8760; h++) {
        const gap = ghiWm2[h]! - dhiWm2[h]! - dniWm2[h]! * sun.meanCosZenith[h]!;
        if (Math.abs(gap) > 1e-9) throw new Error(`hour ${h} is open by ${gap}`);
        if (dniWm2[h]! < 0 || dhiWm2[h]! < 0 || dniWm2[h]! > sun.extraterrestrialNormalWm2[h]!) throw new Error(`${h}`);
      }
    }),
    { numRuns: 20 },
  );
});

test('light is all diffuse at night and under a very low sun', () => {
  const { dniWm2, dhiWm2 } = splitGlobal(new Float64Array(8760).fill(20), sun);
  expect([dniWm2[0], dhiWm2[0]]).toEqual([0, 20]);
  for (let h = 0; h < 8760; h++) if (sun.meanCosZenith[h]! < 0.0523 * sun.upShare[h]!) expect(dniWm2[h]).toBe(0);
});

test('an irradiance that is not a number is refused with its hour', () => {
  const ghiWm2 = new Float64Array(8760);
  ghiWm2[17] = Number.NaN;
  expect(() => splitGlobal(ghiWm2, sun)).toThrow('ghiWm2 at index 17 must be 0 to 100000, got NaN');
});
