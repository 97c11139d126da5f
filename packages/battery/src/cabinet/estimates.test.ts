import { expect, test } from 'vitest';
import { heatCapacityFrom, insulationFrom } from './estimates.js';

// 2 in of extruded polystyrene at 0.0288 W/(m K) is sold as R-10 (1.761 m2K/W); films add 0.17 by ISO 6946.
test('two inches of foam on six square metres conduct what their R-value says', () => {
  expect(insulationFrom({ areaM2: 6, thicknessM: 0.0508, conductivity: 0.0288 })).toBeCloseTo(6 / (1.764 + 0.17), 2);
});

test('every two inches more save less than the two before', () => {
  const u = [0.0508, 0.1016, 0.1524].map((thicknessM) => insulationFrom({ areaM2: 6, thicknessM }));
  expect(u[0]! - u[1]!).toBeGreaterThan(u[1]! - u[2]!);
  expect(u[2]!).toBeGreaterThan(0);
  // Bare sheet metal is held by its air films alone.
  expect(insulationFrom({ areaM2: 6, thicknessM: 0 })).toBeCloseTo(6 / 0.17, 9);
});

test('a lead-acid bank holds more heat than a lithium bank of the same energy', () => {
  expect(heatCapacityFrom('flooded-lead-acid', 24000)).toBeGreaterThan(
    2 * heatCapacityFrom('lithium-iron-phosphate', 24000),
  );
});

test('sizes that cannot be are refused', () => {
  expect(() => insulationFrom({ areaM2: 0, thicknessM: 0.05 })).toThrow(RangeError);
  expect(() => insulationFrom({ areaM2: 1, thicknessM: -0.05 })).toThrow(RangeError);
  expect(() => heatCapacityFrom('agm', Number.NaN)).toThrow(RangeError);
});
