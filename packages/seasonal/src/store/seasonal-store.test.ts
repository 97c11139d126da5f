import { expect, test } from 'vitest';
import {
  checkStore,
  checkTechnology,
  roundTripEfficiency,
  type StoreTechnology,
  sizedStore,
} from './seasonal-store.js';

const technology: StoreTechnology = {
  kind: 'own',
  converterIn: { efficiency: 0.8, minimumLoad: 0.1, standbyW: 5 },
  standingLossPerH: 1e-4,
  converterOut: { efficiency: 0.5, minimumLoad: 0.2, standbyW: 7 },
};

test('a sized store is its technology with three sizes', () => {
  expect(sizedStore(technology, 300, 5000, 120)).toEqual({
    kind: 'own',
    converterIn: { efficiency: 0.8, minimumLoad: 0.1, standbyW: 5, powerW: 300 },
    store: { capacityWh: 5000, standingLossPerH: 1e-4 },
    converterOut: { efficiency: 0.5, minimumLoad: 0.2, standbyW: 7, powerW: 120 },
  });
  expect(roundTripEfficiency(technology)).toBeCloseTo(0.4, 12);
});

test.each(['converterIn', 'converterOut'] as const)('what %s cannot be is refused by name', (side) => {
  const of = (change: object) => () => checkTechnology({ ...technology, [side]: { ...technology[side], ...change } });
  for (const efficiency of [0, 1.01, Number.NaN]) expect(of({ efficiency })).toThrow(`${side}.efficiency`);
  for (const minimumLoad of [-0.1, 1.1]) expect(of({ minimumLoad })).toThrow(`${side}.minimumLoad must be 0 to 1`);
  for (const standbyW of [-1, 2e15]) expect(of({ standbyW })).toThrow(`${side}.standbyW`);
  expect(of({ efficiency: 1, minimumLoad: 1, standbyW: 0 })).not.toThrow();
});

test('a store loses less than all of what it holds, and has sizes from nothing up', () => {
  const losing = (standingLossPerH: number) => () => checkTechnology({ ...technology, standingLossPerH });
  for (const share of [-1e-6, 1]) expect(losing(share)).toThrow('standingLossPerH');
  for (const share of [0, 1 - Number.EPSILON]) expect(losing(share)).not.toThrow();
  expect(() => checkStore(sizedStore(technology, 0, 0, 0))).not.toThrow();
  expect(() => checkStore(sizedStore(technology, -1, 0, 0))).toThrow('converterIn.powerW');
  expect(() => checkStore(sizedStore(technology, 0, -1, 0))).toThrow('store.capacityWh');
  expect(() => checkStore(sizedStore(technology, 0, 0, Number.NaN))).toThrow('converterOut.powerW');
  expect(() => checkStore(sizedStore({ ...technology, standingLossPerH: 1 }, 0, 0, 0))).toThrow('standingLossPerH');
});
