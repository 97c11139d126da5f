import { describe, expect, test } from 'vitest';
import { compileGenerator } from './compile-generator.js';
import { fuelLPerH } from './fuel-line.js';
import type { GeneratorSettings } from './settings.js';

const airC = new Float64Array(8760).fill(10);
const place = { elevationM: 100, airC };

const petrolSet: GeneratorSettings = {
  output: { bus: 'dc', powerW: 3000 },
  fuel: { kind: 'petrol', atFullLPerH: 1.6, idleLPerH: 0.5, pricePerL: 1.55 },
  start: [{ kind: 'charge', below: 0.45 }],
  stop: [{ kind: 'charge', above: 0.8 }],
  accepted: { hours: [[8, 20]] },
};

const voltageRule = { kind: 'voltage', belowV: 23.4, forMin: 15 } as const;

const hoursWith = (mask: Uint8Array) => Array.from(mask.subarray(0, 24).keys()).filter((h) => mask[h] === 1);

test('the engine is started and kept running within accepted hours only', () => {
  const generator = compileGenerator(petrolSet, place);
  expect(hoursWith(generator.startAllowed)).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19]);
  expect(generator.runAllowed).toEqual(generator.startAllowed);
  expect(generator.startBelow[7]).toBe(0);
  expect(generator.startBelow[8]).toBe(0.45);
});

test('hours that bar starts only leave a run under way alone', () => {
  const generator = compileGenerator({ ...petrolSet, accepted: { hours: [[8, 20]], endsRun: false } }, place);
  expect(generator.startAllowed[21]).toBe(0);
  expect(generator.runAllowed[21]).toBe(1);
});

test('an engine started by hand starts when somebody looks, and may run on', () => {
  const generator = compileGenerator(
    { ...petrolSet, start: [{ kind: 'hand', below: 0.5, looksAt: [7, 8, 18] }] },
    place,
  );
  expect(hoursWith(generator.startAllowed)).toEqual([8, 18]);
  expect(generator.startBelow[8]).toBe(0.5);
  expect(generator.startBelow[12]).toBe(0);
  expect(generator.runAllowed[12]).toBe(1);
});

test('an exercise run of a hand-started engine is a start like any other', () => {
  const generator = compileGenerator(
    { ...petrolSet, start: [{ kind: 'hand', below: 0.5, looksAt: [18] }], exercise: { everyDays: 14, minutes: 20 } },
    place,
  );
  expect(generator.exerciseAt[13 * 24 + 10]).toBe(1);
  expect(generator.startAllowed[13 * 24 + 10]).toBe(1);
  expect(generator.startBelow[13 * 24 + 10]).toBe(0);
  expect(generator.exerciseH).toBeCloseTo(1 / 3, 12);
});

test('an AC set keeps its own rating beside that of its charger', () => {
  const generator = compileGenerator(
    { ...petrolSet, output: { bus: 'ac', powerW: 5000, charger: { powerW: 2000, efficiency: 0.9 } } },
    place,
  );
  expect(generator.bus).toBe('ac');
  expect(generator.ratedW[0]).toBe(5000);
  expect(generator.chargerW).toBe(2000);
  expect(generator.chargerEfficiency).toBe(0.9);
  expect(fuelLPerH(5000, generator)).toBeCloseTo(1.6, 12);
});

test('losses of a DC set on the way to the bus cost rating, not fuel at full power', () => {
  const generator = compileGenerator({ ...petrolSet, output: { bus: 'dc', powerW: 3000, efficiency: 0.9 } }, place);
  expect(generator.ratedW[0]).toBeCloseTo(2700, 9);
  expect(fuelLPerH(2700, generator)).toBeCloseTo(1.6, 12);
  expect(fuelLPerH(0, generator)).toBe(0.5);
});

test('of several stop rules the first one to hold counts', () => {
  const stop = [{ kind: 'charge', above: 0.9 }, { kind: 'bulk-end' }, { kind: 'charge', above: 0.85 }] as const;
  const generator = compileGenerator({ ...petrolSet, stop }, place);
  expect(generator.stopAbove).toBe(0.85);
  expect(generator.stopAtBulkEnd).toBe(true);
  expect(compileGenerator({ ...petrolSet, stop: [{ kind: 'bulk-end' }] }, place).stopAbove).toBe(1);
});

test('a voltage rule is handed on as a voltage and a time', () => {
  const start = [
    { kind: 'voltage', belowV: 23.4, forMin: 15 },
    { kind: 'charge', below: 0.4 },
  ] as const;
  const generator = compileGenerator({ ...petrolSet, start }, place);
  expect(generator.startBelowV).toBe(23.4);
  expect(generator.startBelowVForH).toBe(0.25);
  expect(compileGenerator(petrolSet, place).startBelowV).toBe(0);
});

describe('settings that are refused', () => {
  test.each<[string, Partial<GeneratorSettings>, string]>([
    ['a start at or above the stop', { start: [{ kind: 'charge', below: 0.8 }] }, 'stop above must be higher'],
    ['no stop rule', { stop: [] }, 'stop must have at least one rule'],
    ['a charger that gains', { output: { bus: 'ac', powerW: 1, charger: { powerW: 1, efficiency: 1.1 } } }, '0.1 to 1'],
    ['a state of charge in per cent', { start: [{ kind: 'charge', below: 45 }] }, 'start below must be 0 to 1, got 45'],
    ['more fuel at idle than at full', { fuel: { kind: 'petrol', atFullLPerH: 1, idleLPerH: 2 } }, 'atFullLPerH'],
    ['a retry without a wait', { startFailure: { chance: 0.5, seed: 1, retryAfterH: 0 } }, 'retryAfterH'],
    ['not a number', { minimumRunH: Number.NaN }, 'minimumRunH must be 0 to 168, got NaN'],
    ['a bus that takes nearly all', { output: { bus: 'dc', powerW: 1000, efficiency: 0.05 } }, 'output.efficiency'],
    [
      'a stop at the start, whatever the voltage says',
      { start: [{ kind: 'charge', below: 0.8 }, voltageRule] },
      'stop above must be higher than start below 0.8',
    ],
    ['a voltage of nothing', { start: [{ ...voltageRule, belowV: 0 }] }, 'start belowV'],
    ['a time that ran backward', { start: [{ ...voltageRule, forMin: -1 }] }, 'start forMin'],
    ['two voltages', { start: [voltageRule, { ...voltageRule, belowV: 23 }] }, 'one voltage rule at most'],
    ['an hour before the day', { start: [{ kind: 'hand', below: 0.4, looksAt: [-1] }] }, 'got -1'],
    ['half an hour of day', { start: [{ kind: 'hand', below: 0.4, looksAt: [7.5] }] }, 'got 7.5'],
    ['an engine of thin air', { derating: { kind: 'linear', freeM: 0, perM: 2, freeC: 25, perK: 0 } }, 'derating.perM'],
    ['an hour of day that does not exist', { start: [{ kind: 'hand', below: 0.4, looksAt: [24] }] }, 'got 24'],
  ])('%s', (_, change, message) => {
    expect(() => compileGenerator({ ...petrolSet, ...change }, place)).toThrow(RangeError);
    expect(() => compileGenerator({ ...petrolSet, ...change }, place)).toThrow(message);
  });

  test('a dull-tomorrow rule without days of sun', () => {
    const start = [{ kind: 'dull-tomorrow', below: 0.6, dullBelowWhM2: 1000, honesty: 'perfect' }] as const;
    expect(() => compileGenerator({ ...petrolSet, start }, place)).toThrow(
      new TypeError('a dull-tomorrow start rule needs dailySunWhM2'),
    );
  });
});

test('minutes and days become the hours that the loop counts in, and are nothing where nothing is said', () => {
  const habits = { warmUpMin: 6, coolDownMin: 3, minimumRunH: 2, fullEveryDays: 14 };
  const generator = compileGenerator({ ...petrolSet, ...habits, exercise: { everyDays: 30, minutes: 15 } }, place);
  expect(generator).toMatchObject({ warmUpH: 0.1, coolDownH: 0.05, minimumRunH: 2, fullEveryDays: 14 });
  expect(generator).toMatchObject({ exerciseH: 0.25, exerciseEveryH: 720 });
  const bare = compileGenerator(petrolSet, place);
  expect(bare).toMatchObject({ warmUpH: 0, coolDownH: 0, minimumRunH: 0, fullEveryDays: 0, exerciseEveryH: 0 });
  expect(bare.startFailure.chance).toBe(0);
  expect(bare.retryAfterH).toBeGreaterThan(0);
  expect(bare.stopAtBulkEnd).toBe(false);
});

// A diesel is underloaded below 30 % of its nameplate, at the bus less what is lost on the way: 0.3 x 3000 x 0.9.
test('a diesel has a minimum load, a petrol engine only one that is named', () => {
  const diesel: GeneratorSettings = {
    ...petrolSet,
    fuel: { kind: 'diesel', atFullLPerH: 1.2, idleLPerH: 0.3 },
    output: { bus: 'dc', powerW: 3000, efficiency: 0.9 },
  };
  expect(compileGenerator(diesel, place).minimumLoadW).toBeCloseTo(810, 9);
  expect(compileGenerator(petrolSet, place).minimumLoadW).toBe(0);
  expect(compileGenerator({ ...petrolSet, minimumLoad: 0.2 }, place).minimumLoadW).toBeCloseTo(600, 9);
});

test('a start that fails by chance is handed on with its wait', () => {
  const startFailure = { chance: 0.1, seed: -3, retryAfterH: 0.5 };
  const generator = compileGenerator({ ...petrolSet, startFailure }, place);
  expect(generator.startFailure).toEqual(startFailure);
  expect(generator.retryAfterH).toBe(0.5);
  expect(() => compileGenerator({ ...petrolSet, startFailure: { ...startFailure, seed: 1.5 } }, place)).toThrow(
    'startFailure.seed must be a whole number, got 1.5',
  );
});
