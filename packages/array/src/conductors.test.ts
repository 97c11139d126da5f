import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coldVoltageFactor } from './cold-voltage.js';
import { ampacityHintA, awgAreaMm2, cableOhm, conductorOhmPerM, fuseHintA, voltageDropV } from './conductors.js';

test('current runs a cable twice: there and back', () => {
  const cable = { lengthM: 25, areaMm2: awgAreaMm2(6), conductorC: 40 };
  expect(cableOhm(cable)).toBeCloseTo(50 * conductorOhmPerM(awgAreaMm2(6), 40), 12);
  expect(voltageDropV(20, cable)).toBeCloseTo(20 * cableOhm(cable), 12);
});

test('a cold cable resists less: 0.39 % per K of its resistance at 20 degC', () => {
  const at = (conductorC: number) => conductorOhmPerM(10, conductorC);
  expect((at(50) - at(20)) / at(20) / 30).toBeCloseTo(0.00393, 9);
});

test('the rule-of-thumb ampacity rises with area and passes through its table', () => {
  expect(ampacityHintA(awgAreaMm2(10))).toBeCloseTo(35, 6);
  expect(ampacityHintA(awgAreaMm2(-3))).toBeCloseTo(230, 6);
  const area = fc.double({ min: 0.5, max: 240, noNaN: true });
  fc.assert(
    fc.property(area, area, (a, b) => {
      expect(ampacityHintA(Math.max(a, b))).toBeGreaterThanOrEqual(ampacityHintA(Math.min(a, b)));
    }),
  );
});

test('the fuse hint is the next common rating up, and none beyond the list', () => {
  expect(fuseHintA(15.3)).toBe(20);
  expect(fuseHintA(20)).toBe(20);
  expect(fuseHintA(401)).toBeNull();
});

test('sizes and lengths that cannot be are refused', () => {
  expect(() => cableOhm({ lengthM: -1, areaMm2: 6, conductorC: 20 })).toThrow(/lengthM must be 0 to 10000, got -1/);
  expect(() => cableOhm({ lengthM: 1, areaMm2: 0, conductorC: 20 })).toThrow(/areaMm2 must be/);
  expect(() => cableOhm({ lengthM: 1, areaMm2: 6, conductorC: Number.NaN })).toThrow(/conductorC must be/);
  expect(() => awgAreaMm2(6.5)).toThrow(/wire gauge must be a whole number/);
});

test('each size is taken up to its limits and refused beyond', () => {
  for (const [areaMm2, conductorC] of [
    [0.05, 20],
    [2000, 20],
    [6, -80],
    [6, 150],
  ] as const) {
    expect(conductorOhmPerM(areaMm2, conductorC)).toBeGreaterThan(0);
  }
  for (const areaMm2 of [0.04, 2001]) expect(() => conductorOhmPerM(areaMm2, 20)).toThrow(/areaMm2/);
  for (const conductorC of [-81, 151]) expect(() => conductorOhmPerM(6, conductorC)).toThrow(/conductorC/);
  expect(cableOhm({ lengthM: 0, areaMm2: 6, conductorC: 20 })).toBe(0);
  expect(cableOhm({ lengthM: 10_000, areaMm2: 6, conductorC: 20 })).toBeGreaterThan(0);
  expect(() => cableOhm({ lengthM: 10_001, areaMm2: 6, conductorC: 20 })).toThrow(/lengthM/);
  expect(() => ampacityHintA(0)).toThrow(/areaMm2 must be above 0, got 0/);
});

// Straight in the logarithms: half way between 10 and 8 gauge the geometric mean of 35 and 50 A; below 14 gauge the first
// line goes on, as from 12 to 14, above 4/0 the last.
test('between gauges the hint is the geometric mean, and beyond the table its lines go on', () => {
  const between = (a: number, b: number) => ampacityHintA(Math.sqrt(awgAreaMm2(a) * awgAreaMm2(b)));
  expect(between(10, 8)).toBeCloseTo(Math.sqrt(35 * 50), 9);
  expect(between(14, 12)).toBeCloseTo(Math.sqrt(20 * 25), 9);
  expect(between(-2, -3)).toBeCloseTo(Math.sqrt(200 * 230), 9);
  expect(ampacityHintA(awgAreaMm2(16))).toBeCloseTo((20 * 20) / 25, 9);
  expect(ampacityHintA(awgAreaMm2(-3) ** 2 / awgAreaMm2(-2))).toBeCloseTo((230 * 230) / 200, 9);
});

test('a fuse of just the current will do', () => {
  expect([1, 1.01, 400].map(fuseHintA)).toEqual([1, 2, 400]);
});

test('record lows are taken from -90 to 60 degC', () => {
  // Below the table's last row its steps go on at 0.004 per K: 50 K below -40 degC.
  expect(coldVoltageFactor(-90)).toBeCloseTo(1.25 + 50 * 0.004, 12);
  expect(coldVoltageFactor(60)).toBe(1);
  for (const lowC of [-91, 61, Number.NaN]) expect(() => coldVoltageFactor(lowC)).toThrow(/record low/);
});
