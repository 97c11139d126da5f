import fc from 'fast-check';
import { expect, test } from 'vitest';
import { commonDerating, deratedShare, ratedPowerYear } from './derating.js';
import type { GeneratorSettings } from './settings.js';

const settings: GeneratorSettings = {
  output: { bus: 'dc', powerW: 3000 },
  fuel: { kind: 'petrol', atFullLPerH: 1.6, idleLPerH: 0.5 },
  start: [],
  stop: [{ kind: 'bulk-end' }],
};

test('low and cool, the engine gives its rating and no more', () => {
  expect(deratedShare(commonDerating, 0, -40)).toBe(1);
  expect(deratedShare(commonDerating, 150, 25)).toBe(1);
  expect(deratedShare({ kind: 'none' }, 4000, 45)).toBe(1);
});

test('higher or hotter never gives more, and never less than nothing', () => {
  const height = fc.integer({ min: -400, max: 9000 });
  const heat = fc.integer({ min: -600, max: 600 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(height, height, heat, heat, (h1, h2, c1, c2) => {
      const better = deratedShare(commonDerating, Math.min(h1, h2), Math.min(c1, c2));
      const worse = deratedShare(commonDerating, Math.max(h1, h2), Math.max(c1, c2));
      expect(worse).toBeLessThanOrEqual(better);
      expect(worse).toBeGreaterThanOrEqual(0);
      expect(better).toBeLessThanOrEqual(1);
    }),
  );
});

test('the hourly rating follows the air', () => {
  const airC = new Float64Array(8760).fill(10);
  airC[5000] = 36;
  const ratedW = ratedPowerYear(settings, 450, airC);
  expect(ratedW[0]).toBeCloseTo(3000 * 0.965, 9);
  expect(ratedW[5000]).toBeCloseTo(3000 * 0.965 * 0.98, 9);
  expect(ratedPowerYear({ ...settings, derating: { kind: 'none' } }, 450, airC)[5000]).toBe(3000);
});

test('air that is not a year of numbers is refused', () => {
  expect(() => ratedPowerYear(settings, 0, new Float64Array(24))).toThrow('airC must hold 8760 numbers, got 24');
  expect(() => ratedPowerYear(settings, 0, new Float64Array(8760).fill(Number.NaN))).toThrow(
    'airC at index 0 must be -90 to 70, got NaN',
  );
});
