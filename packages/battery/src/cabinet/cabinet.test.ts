import { expect, test } from 'vitest';
import { type Cabinet, cabinetStep, checkCabinet, heaterPower } from './cabinet.js';

const box: Cabinet = { insulationWPerK: 0.9, heatCapacityWhPerK: 110 };

// Newton's law of cooling: after one time constant 1/e of the difference is left.
test('an unheated cabinet closes to 1/e of the difference in one time constant', () => {
  expect(cabinetStep(20, -10, 0, 0, 110 / 0.9, box)).toBeCloseTo(-10 + 30 / Math.E, 10);
});

test('one long step equals many short ones', () => {
  const both: Cabinet = { ...box, ventilationWPerK: 0.3, sharedRoom: { roomC: 18, WPerK: 0.5 } };
  let tempC = 3;
  for (let k = 0; k < 240; k++) tempC = cabinetStep(tempC, -22, 15, 5, 0.1, both);
  expect(tempC).toBeCloseTo(cabinetStep(3, -22, 15, 5, 24, both), 9);
});

test('in the long run losses and heater are carried off by the conductances', () => {
  const both: Cabinet = { ...box, ventilationWPerK: 0.3, sharedRoom: { roomC: 18, WPerK: 0.5 } };
  const settledC = cabinetStep(3, -22, 15, 5, 1e5, both);
  expect(1.2 * (settledC + 22) + 0.5 * (settledC - 18)).toBeCloseTo(20, 9);
});

test('a cabinet without any conductance keeps all its heat', () => {
  expect(cabinetStep(10, -40, 55, 0, 2, { insulationWPerK: 0, heatCapacityWhPerK: 110 })).toBe(11);
});

test('the thermostat gives just the power that holds the temperature, within what the heater has', () => {
  const heater = { powerW: 60, keepAboveC: 5 };
  const powerW = heaterPower(5, -25, 2, 1, box, heater);
  expect(powerW).toBeCloseTo(0.9 * 30 - 2, 9);
  expect(cabinetStep(5, -25, 2, powerW, 1, box)).toBeCloseTo(5, 9);
  expect(heaterPower(0, -40, 0, 1, box, heater)).toBe(60);
  expect(heaterPower(12, -25, 2, 1, box, heater)).toBe(0);
});

test('an impossible cabinet is refused with its value', () => {
  expect(() => checkCabinet({ insulationWPerK: -1, heatCapacityWhPerK: 110 })).toThrow(/insulationWPerK .* -1/);
  expect(() => checkCabinet({ insulationWPerK: 1, heatCapacityWhPerK: 0 })).toThrow(RangeError);
  expect(() => checkCabinet({ insulationWPerK: Number.NaN, heatCapacityWhPerK: 1 })).toThrow(RangeError);
});

// By hand: to hold 5 degC, 1.2 W/K to -25 degC take 36 W; the room at 18 degC brings 0.5 x 13 = 6.5 W, the bank 2 W.
test('beside a warm room the thermostat gives what the room does not', () => {
  const both: Cabinet = { ...box, ventilationWPerK: 0.3, sharedRoom: { roomC: 18, WPerK: 0.5 } };
  expect(heaterPower(5, -25, 2, 1, both, { powerW: 60, keepAboveC: 5 })).toBeCloseTo(27.5, 9);
});

test('the limits of a cabinet themselves are allowed, what lies beyond is refused', () => {
  const room = { roomC: 18, WPerK: 0.5 };
  const edge: Cabinet = { insulationWPerK: 0, heatCapacityWhPerK: 0.01, ventilationWPerK: 0 };
  expect(() => checkCabinet({ ...edge, sharedRoom: room })).not.toThrow();
  expect(() => checkCabinet({ ...edge, sharedRoom: { roomC: -60, WPerK: 0 } })).not.toThrow();
  expect(() => checkCabinet({ ...edge, sharedRoom: { roomC: -61, WPerK: 0 } })).toThrow(/roomC .* -61/);
  expect(() => checkCabinet({ ...edge, sharedRoom: { ...room, WPerK: -1 } })).toThrow(/sharedRoom.WPerK .* -1/);
  expect(() => checkCabinet({ ...edge, ventilationWPerK: -0.1 })).toThrow(/ventilationWPerK .* -0.1/);
  expect(() => checkCabinet({ ...edge, insulationWPerK: 1e6 })).toThrow(/insulationWPerK/);
});
