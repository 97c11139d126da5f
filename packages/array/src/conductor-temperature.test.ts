import { expect, test } from 'vitest';
import { runningConductorC } from './conductor-temperature.js';
import { ampacityHintA, awgAreaMm2, conductorOhmPerM } from './conductors.js';

const hours = (of: (h: number) => number) => Float64Array.from({ length: 48 }, (_, h) => of(h));
const area = awgAreaMm2(6);

// The table's own condition: 75 degC at its current in air of 30 degC.
test('at the current of the ampacity table, in its air, the copper has the temperature of the table', () => {
  expect(
    runningConductorC(
      hours(() => 1000),
      hours(() => 30),
      ampacityHintA(area),
      area,
    ),
  ).toBeCloseTo(75, 9);
});

test('a lightly loaded cable is as warm as the air of the hours in which it carries current', () => {
  const day = hours((h) => (h % 24 < 12 ? 800 : 0));
  const air = hours((h) => (h % 24 < 12 ? 20 : -20));
  expect(runningConductorC(day, air, 0.01, area)).toBeCloseTo(20, 3);
  expect(
    runningConductorC(
      hours(() => 0),
      air,
      30,
      area,
    ),
  ).toBeCloseTo(0, 9);
});

test('one temperature for the year loses what every hour loses at its own', () => {
  const light = hours((h) => (h * 137) % 1000);
  const air = hours((h) => 25 * Math.sin(h / 7));
  const ratedA = 40;
  let loss = 0;
  let squares = 0;
  for (let h = 0; h < 48; h++) {
    const amps = (ratedA * light[h]!) / 1000;
    const ownC = air[h]! + 45 * (amps / ampacityHintA(area)) ** 2;
    loss += amps * amps * conductorOhmPerM(area, ownC);
    squares += amps * amps;
  }
  const one = conductorOhmPerM(area, runningConductorC(light, air, ratedA, area));
  expect(one / (loss / squares)).toBeCloseTo(1, 12);
});

test('no cable is counted hotter than 120 degC', () => {
  expect(
    runningConductorC(
      hours(() => 1000),
      hours(() => 30),
      5 * ampacityHintA(area),
      area,
    ),
  ).toBe(120);
});

test('without any light a cable has the mean temperature of the air', () => {
  const air = hours((h) => (h % 24 < 12 ? 20 : -6));
  const dark = hours(() => 0);
  expect(runningConductorC(dark, air, 30, area)).toBeCloseTo(7, 9);
});
