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

// 24 kWh at 35 Wh/kg are 686 kg, at 0.26 Wh/(kg K) 178 Wh/K.
test('a bank of 24 kWh weighs some 700 kg and takes 178 Wh to warm by a kelvin', () => {
  expect(heatCapacityFrom('agm', 24_000)).toBeCloseTo(178.3, 1);
});

test('each size is refused at its own limit', () => {
  const box = { areaM2: 6, thicknessM: 0.05, conductivity: 0.03 };
  expect(() => insulationFrom({ ...box, areaM2: 1e4 })).toThrow(/areaM2/);
  expect(() => insulationFrom({ ...box, thicknessM: 10 })).toThrow(/thicknessM/);
  for (const conductivity of [0, -1, 500]) {
    expect(() => insulationFrom({ ...box, conductivity })).toThrow(/conductivity/);
  }
  // A steel wall is no box of foam, but a wall.
  expect(insulationFrom({ ...box, conductivity: 50 })).toBeCloseTo(6 / (0.17 + 0.001), 9);
  for (const energyWh of [0, -1, 1e10]) expect(() => heatCapacityFrom('agm', energyWh)).toThrow(/energyWh/);
});
