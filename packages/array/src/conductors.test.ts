import fc from 'fast-check';
import { expect, test } from 'vitest';
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
