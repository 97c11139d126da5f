import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearYear } from './check/clear-year.fixture.js';
import { hasSnowData, snowDepthFrom } from './snow-depth.js';
import type { WeatherYear } from './weather-year.js';

const base = clearYear();
const bareYear = (airC: (h: number) => number, rainMm: (h: number) => number): WeatherYear => ({
  ...base,
  airC: Float64Array.from({ length: 8760 }, (_, h) => airC(h)),
  precipitationMm: Float64Array.from({ length: 8760 }, (_, h) => rainMm(h)),
});

test('10 mm of water falling as snow lie 10 cm deep and settle to a third', () => {
  // Melted in summer, so that each year begins bare.
  const depth = snowDepthFrom(
    bareYear(
      (h) => (h < 4000 ? -5 : 10),
      (h) => (h === 100 ? 10 : 0),
    ),
  )!;
  expect(depth[99]).toBe(0);
  expect(depth[100]).toBeCloseTo(0.1, 12);
  expect(depth[3999]).toBeCloseTo(10 / 300, 6);
  expect(depth[8759]).toBe(0);
});

test('melt is 4 mm of water for each degree and day', () => {
  // 20 mm at 5 degC is gone in one day.
  const depth = snowDepthFrom(
    bareYear(
      (h) => (h < 2000 ? -5 : 5),
      (h) => (h === 100 ? 20 : 0),
    ),
  )!;
  expect(depth[2000 + 22]).toBeGreaterThan(0);
  expect(depth[2000 + 24]).toBeCloseTo(0, 12);
});

test('rain leaves no snow, sleet half', () => {
  expect(
    snowDepthFrom(
      bareYear(
        () => 3,
        () => 1,
      ),
    )!.every((depth) => depth === 0),
  ).toBe(true);
  const sleet = snowDepthFrom(
    bareYear(
      (h) => (h === 100 ? 1 : h < 2000 ? -1 : 9),
      (h) => (h === 100 ? 10 : 0),
    ),
  )!;
  expect(sleet[100]).toBeCloseTo((5 - 4 / 24) / 100 / 1, 3);
});

test('snow of December lies on the first of January', () => {
  const depth = snowDepthFrom(
    bareYear(
      (h) => (h > 3000 && h < 7000 ? 15 : -5),
      (h) => (h === 8700 ? 30 : 0),
    ),
  )!;
  expect(depth[0]).toBeGreaterThan(0.1);
});

test('depths of the file are kept, and believed only where they can be', () => {
  const snowDepthM = base.airC.map((air) => (air < 0 ? 0.3 : 0));
  expect(snowDepthFrom({ ...base, snowDepthM })).toBe(snowDepthM);
  expect(hasSnowData({ ...base, snowDepthM })).toBe(true);
  expect(hasSnowData({ ...base, snowDepthM: new Float64Array(8760) })).toBe(false);
  expect(hasSnowData(base)).toBe(false);
  expect(snowDepthFrom(base)).toBeNull();
});

test('depth is never negative nor endless', () => {
  fc.assert(
    fc.property(fc.integer({ min: -50, max: 40 }), fc.integer({ min: 0, max: 20 }), (air, mm) => {
      const depth = snowDepthFrom(
        bareYear(
          (h) => air + 10 * Math.sin(h / 1400),
          (h) => (h % 30 === 0 ? mm : 0),
        ),
      )!;
      expect(depth.every((value) => value >= 0 && Number.isFinite(value))).toBe(true);
    }),
    { numRuns: 20 },
  );
});
