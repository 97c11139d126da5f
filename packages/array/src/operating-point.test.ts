import fc from 'fast-check';
import { expect, test } from 'vitest';
import { currentAt, maximumPower, openCircuitVoltage } from './operating-point.js';
import { solveModule } from './solve-module.js';

// Invented sheets.
const areaM2 = 1.64;
const crystalline = solveModule({
  ...{ vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, areaM2, vocPerK: -0.0031, iscPerK: 0.0005 },
});
const thinFilm = solveModule({
  ...{ vmpV: 64.6, impA: 1.16, vocV: 90, iscA: 1.37, cells: 116, vocPerK: -0.0025, iscPerK: 0.0004 },
  technology: 'thin-film',
});
const point = new Float64Array(3);

// Tenths, and now and then starlight.
const lightWm2 = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 0, max: 15000 }).map((tenths) => tenths / 10) },
  { weight: 1, arbitrary: fc.integer({ min: -9, max: 0 }).map((exponent) => 10 ** exponent) },
);
const cellC = fc.integer({ min: -500, max: 900 }).map((tenths) => tenths / 10);
const module = fc.constantFrom(crystalline, thinFilm);

test('every light and temperature gives finite power, voltage and current, none negative', () => {
  fc.assert(
    fc.property(module, lightWm2, cellC, (p, light, cell) => {
      maximumPower(p, light, cell, point);
      for (const value of point) expect(value >= 0 && Number.isFinite(value)).toBe(true);
      expect(openCircuitVoltage(p, light, cell)).toBeGreaterThanOrEqual(point[1]!);
    }),
    { numRuns: 400 },
  );
});

test('a module never gives more than the light that falls on it', () => {
  fc.assert(
    fc.property(lightWm2, cellC, (light, cell) => {
      maximumPower(crystalline, light, cell, point);
      expect(point[0]!).toBeLessThanOrEqual(light * areaM2);
    }),
  );
});

test('no voltage gives more power than the maximum-power voltage', () => {
  fc.assert(
    fc.property(module, lightWm2, cellC, fc.integer({ min: 0, max: 1200 }), (p, light, cell, tenthVolts) => {
      maximumPower(p, light, cell, point);
      const voltage = tenthVolts / 10;
      // A module counts as dark below a millionth of a W/m2: there the curve may still give some nanowatts.
      expect(voltage * currentAt(p, light, cell, voltage)).toBeLessThanOrEqual(point[0]! * (1 + 1e-9) + 1e-8);
    }),
    { numRuns: 400 },
  );
});

test('maximum power rises with light', () => {
  fc.assert(
    fc.property(module, lightWm2, lightWm2, cellC, (p, one, other, cell) => {
      maximumPower(p, Math.min(one, other), cell, point);
      const dim = point[0]!;
      maximumPower(p, Math.max(one, other), cell, point);
      expect(point[0]!).toBeGreaterThanOrEqual(dim);
    }),
    { numRuns: 300 },
  );
});

test('the current solves the curve it was asked for, from reverse voltage to far above open circuit', () => {
  fc.assert(
    fc.property(lightWm2, fc.integer({ min: -200, max: 800 }), (light, tenthVolts) => {
      const voltage = tenthVolts / 10;
      const p = crystalline;
      const current = currentAt(p, light, 25, voltage);
      const x = voltage + current * p.seriesOhm;
      const s = light / 1000;
      const rest = s * p.lightA - p.saturationA * Math.expm1(x / p.idealityV) - s * p.shuntS * x;
      expect(Math.abs(rest - current)).toBeLessThan(1e-9 * (1 + Math.abs(current)));
    }),
    { numRuns: 400 },
  );
});

test('the current at the maximum-power voltage is the maximum-power current, and zero at open circuit', () => {
  maximumPower(crystalline, 640, 8, point);
  expect(currentAt(crystalline, 640, 8, point[1]!)).toBeCloseTo(point[2]!, 8);
  expect(currentAt(crystalline, 640, 8, openCircuitVoltage(crystalline, 640, 8))).toBeCloseTo(0, 8);
});

test('without light there is no power, and the dark module only takes current', () => {
  maximumPower(crystalline, 0, -30, point);
  expect([...point]).toEqual([0, 0, 0]);
  expect(openCircuitVoltage(crystalline, 0, -30)).toBe(0);
  expect(currentAt(crystalline, 0, 25, 28)).toBeLessThan(0);
  expect(currentAt(crystalline, 0, 25, 0)).toBe(0);
});

// Sheets by EN 50380 state the efficiency at 200 W/m2, mostly 95 to 100 % of that at 1000 (common practice, no source).
test('at 200 W/m2 and 25 degC a crystalline module keeps 95 to 100 % of its efficiency', () => {
  maximumPower(crystalline, 200, 25, point);
  const kept = point[0]! / 0.2 / crystalline.ratedW;
  expect(kept).toBeGreaterThan(0.95);
  expect(kept).toBeLessThan(1);
});

test('starlight still solves: a millionth of a watt per square metre gives next to nothing', () => {
  maximumPower(crystalline, 1e-6, -40, point);
  expect(point[0]!).toBeGreaterThan(0);
  expect(point[0]!).toBeLessThan(1e-6 * areaM2);
});
