import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dcYear } from './dc-year.js';
import { currentAt, maximumPower } from './operating-point.js';
import { solveModule } from './solve-module.js';
import type { ArrayYearInput } from './wiring.js';

// Invented sheet, 20 V class.
const parameters = solveModule({
  ...{ vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, vocPerK: -0.0031, iscPerK: 0.0005 },
});
const one = (effectiveWm2: number, cellC: number, more: Partial<ArrayYearInput> = {}) =>
  dcYear({
    ...{ parameters, inSeries: 2, strings: 3, cableOhm: 0 },
    ...{ effectiveWm2: Float64Array.of(effectiveWm2), cellC: Float64Array.of(cellC) },
    ...more,
  });

test('six modules two in series give six times the power, twice the voltage, three times the current', () => {
  const point = new Float64Array(3);
  maximumPower(parameters, 730, 41, point);
  const dc = one(730, 41);
  expect(dc.powerW[0]).toBeCloseTo(6 * point[0]!, 9);
  expect(dc.voltageV[0]).toBeCloseTo(2 * point[1]!, 9);
  expect(dc.currentA[0]).toBeCloseTo(3 * point[2]!, 9);
  expect(dc.cableLossW[0]).toBe(0);
});

test('mismatch and age take their share of power and leave the voltage', () => {
  const whole = one(730, 41);
  const worn = one(730, 41, { mismatch: 0.02, age: 0.1 });
  expect(worn.powerW[0]! / whole.powerW[0]!).toBeCloseTo(0.98 * 0.9, 12);
  expect(worn.voltageV[0]).toBeCloseTo(whole.voltageV[0]!, 12);
});

test('dirt and snow act as less light', () => {
  const dim = one(500 * 0.96 * 0.7, 10);
  const dirty = one(500, 10, { soiling: 0.04, snowShare: Float64Array.of(0.3) });
  expect(dirty.litWm2[0]).toBeCloseTo(336, 9);
  expect(dirty.powerW[0]).toBeCloseTo(dim.powerW[0]!, 9);
  expect(one(500, 10, { snowShare: Float64Array.of(1) }).powerW[0]).toBe(0);
});

test('soiling by month acts in its month', () => {
  const soiling = [0, 0, 0, 0, 0, 0, 0.1, 0, 0, 0, 0, 0];
  const effectiveWm2 = new Float64Array(8760).fill(500);
  const dc = dcYear({
    parameters,
    inSeries: 1,
    strings: 1,
    cableOhm: 0,
    effectiveWm2,
    cellC: new Float64Array(8760),
    soiling,
  });
  // July: hours 4344 to 5087.
  expect([4343, 4344, 5087, 5088].map((h) => dc.litWm2[h])).toEqual([500, 450, 450, 500]);
});

test('the operating point lies on the array curve, with the cable drop between array and controller', () => {
  const dc = one(900, 30, { cableOhm: 0.2 });
  const current = dc.currentA[0]!;
  const arrayV = dc.voltageV[0]! + 0.2 * current;
  expect(3 * currentAt(parameters, 900, 30, arrayV / 2)).toBeCloseTo(current, 8);
  expect(dc.powerW[0]).toBeCloseTo(dc.voltageV[0]! * current, 8);
  expect(dc.cableLossW[0]).toBeCloseTo(0.2 * current ** 2, 8);
});

test('a cable costs its heat and hardly more, and never gives', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1500 }),
      fc.integer({ min: -50, max: 90 }),
      fc.integer({ min: 0, max: 500 }),
      (light, cell, milliohm) => {
        const cableOhm = milliohm / 1000;
        const lost = one(light, cell).powerW[0]! - one(light, cell, { cableOhm }).powerW[0]!;
        const heat = one(light, cell, { cableOhm }).cableLossW[0]!;
        // The controller moves to a smaller current, so the loss is not above the heat at the array's own best point.
        const ownCurrent = one(light, cell).currentA[0]!;
        expect(lost).toBeGreaterThanOrEqual(heat - 1e-9 - 1e-9 * heat);
        expect(lost).toBeLessThanOrEqual(ownCurrent ** 2 * cableOhm * (1 + 1e-9) + 1e-9);
      },
    ),
    { numRuns: 200 },
  );
});

test.each<[Partial<ArrayYearInput>, RegExp]>([
  [{ inSeries: 0 }, /inSeries must be a whole number from 1, got 0/],
  [{ strings: 1.5 }, /strings must be a whole number/],
  [{ cableOhm: Number.NaN }, /cableOhm must be 0 to 1000, got NaN/],
  [{ cellC: new Float64Array(2) }, /cellC must have 1 hours like effectiveWm2, got 2/],
  [{ effectiveWm2: Float64Array.of(Number.NaN) }, /effectiveWm2 of hour 0 must be 0 to 3000, got NaN/],
  [{ cellC: Float64Array.of(400) }, /cellC of hour 0/],
  [{ mismatch: 2 }, /mismatch must be 0 to 1, got 2/],
  [{ snowShare: Float64Array.of(-0.1) }, /snowShare of hour 0 must be 0 to 1/],
  [{ soiling: [0.1] }, /soiling by month needs 12 shares/],
])('wrong input %# is refused by name', (wrong, message) => {
  expect(() => one(500, 20, wrong)).toThrow(RangeError);
  expect(() => one(500, 20, wrong)).toThrow(message);
});

test('the limits of wiring and weather themselves are allowed, what lies beside them is not', () => {
  for (const edge of [
    { inSeries: 1, strings: 1 },
    { cableOhm: 0 },
    { effectiveWm2: Float64Array.of(3000) },
    { cellC: Float64Array.of(-100) },
    { cellC: Float64Array.of(150) },
    { mismatch: 1, age: 1 },
    { snowShare: Float64Array.of(1), soiling: 1 },
  ]) {
    expect(Number.isFinite(one(500, 20, edge).powerW[0])).toBe(true);
  }
  for (const [wrong, message] of [
    [{ strings: 0 }, /strings/],
    [{ inSeries: 1.5 }, /inSeries/],
    [{ cableOhm: 1000 }, /cableOhm/],
    [{ cableOhm: -0.1 }, /cableOhm/],
    [{ effectiveWm2: Float64Array.of(-1) }, /effectiveWm2 of hour 0/],
    [{ effectiveWm2: Float64Array.of(3001) }, /effectiveWm2 of hour 0/],
    [{ cellC: Float64Array.of(-101) }, /cellC of hour 0/],
    [{ age: -0.1 }, /age must be 0 to 1/],
    [{ soiling: 1.1 }, /soiling must be 0 to 1/],
    [{ snowShare: new Float64Array(2) }, /snowShare must have 1 hours, got 2/],
    [{ snowShare: Float64Array.of(1.1) }, /snowShare of hour 0/],
    [{ soiling: new Array(12).fill(0.1) }, /12 shares and 8760 hours, got 12 and 1/],
  ] as const) {
    expect(() => one(500, 20, wrong)).toThrow(message);
  }
});

test('soiling beyond what is whole in any month is refused', () => {
  const year = { effectiveWm2: new Float64Array(8760), cellC: new Float64Array(8760) };
  expect(() => one(0, 0, { ...year, soiling: [...new Array(11).fill(0), 1.1] })).toThrow(/soiling must be 0 to 1/);
  expect(() => one(0, 0, { ...year, soiling: new Array(11).fill(0) })).toThrow('got 11 and 8760');
});
