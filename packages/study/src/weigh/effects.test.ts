import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import { effects, isPresent } from './effects.js';

const array = {
  name: 'shed',
  losses: { glass: true, soiling: 0.02, mismatch: 0.01, age: 5 },
  cable: { length: 25 },
  mount: { kind: 'pole', drive: { power: 10 } },
  controller: { kind: 'maximum-power', efficiency: 0.97, nightDraw: 2, maxCurrent: 60, maxVoltage: 150 },
};
/** A design with something of every effect but that of a direct connection. */
const full = {
  skyline: [{ from: 70, to: 125 }],
  horizon: [1, 2],
  snow: { cover: 'layer', days: [] },
  arrays: [array],
  bank: { voltage: 24, cabinet: { insulation: 1, heatCapacity: 250, ventilation: 2, heatedBy: 'none' } },
  inverter: { power: 4000, idle: 18 },
  loads: [{ name: 'radio', standby: 3 }],
  generator: { failsToStart: { chance: 0.1 }, output: { power: 3000 } },
} as unknown as Site;
const effect = (name: string) => effects.find((one) => one.name === name)!;
const without = (name: string, of: Site = full) => effect(name).without(of);
const withArray = (of: object) => ({ ...full, arrays: [{ ...array, ...of }] }) as unknown as Site;

test('a design without any effect loses nothing by leaving one out', () => {
  const bare = effects.reduce((site, { without: leave }) => leave(site), full);
  for (const one of effects) expect(isPresent(one, bare), one.name).toBe(false);
});

test('every effect of a design is there, but that of a connection which it has not', () => {
  expect(effects.filter((one) => !isPresent(one, full)).map(({ name }) => name)).toEqual(['direct connection']);
});

test.each([
  ['skyline', { skyline: [] }],
  ['snow left lying', { snow: { ...full.snow, clearing: { within: 3 } } }],
  ['glass', { arrays: [{ ...array, losses: { ...array.losses, glass: false } }] }],
  ['soiling', { arrays: [{ ...array, losses: { ...array.losses, soiling: 0 } }] }],
  ['mismatch', { arrays: [{ ...array, losses: { ...array.losses, mismatch: 0 } }] }],
  ['ageing of the modules', { arrays: [{ ...array, losses: { ...array.losses, age: 0 } }] }],
  ['controller conversion', { arrays: [{ ...array, controller: { ...array.controller, efficiency: 1 } }] }],
  ['controller at night', { arrays: [{ ...array, controller: { ...array.controller, nightDraw: 0 } }] }],
  ['tracker drive', { arrays: [{ ...array, mount: { kind: 'pole' } }] }],
  ['standby of loads', { loads: [{ name: 'radio', standby: 0 }] }],
  ['failed starts', { generator: { output: { power: 3000 } } }],
  // A search mode that is never left draws nothing.
  ['inverter idling', { inverter: { power: 4000, idle: 18, search: { idle: 0, below: 4000 } } }],
])('%s is left out alone', (name, expected) => {
  const { horizon, ...clear } = full;
  expect(without(name)).toEqual({ ...(name === 'skyline' ? clear : full), ...expected });
});

test('a cable is left out whole', () => {
  const [bare] = without('array cable').arrays;
  expect(bare).not.toHaveProperty('cable');
  expect(bare!.name).toBe('shed');
});

test('snow is never on the array, and what lies on the ground stays', () => {
  expect(without('snow on the array').snow).toMatchObject({ cover: 'none', days: [] });
});

test('who sweeps within three hours leaves no snow lying, nor does who has none', () => {
  const swept = (snow: object) => ({ ...full, snow: { ...full.snow, ...snow } }) as Site;
  expect(isPresent(effect('snow left lying'), swept({ clearing: { within: 3 } }))).toBe(false);
  expect(isPresent(effect('snow left lying'), swept({ clearing: { within: 1 } }))).toBe(false);
  expect(isPresent(effect('snow left lying'), swept({ clearing: { within: 4 } }))).toBe(true);
  expect(isPresent(effect('snow left lying'), swept({ cover: 'none' }))).toBe(false);
});

test('a bank is kept at 25 degC by a room that it cannot cool, with the heat capacity of its cabinet', () => {
  const heatedBy = { kind: 'room', temperature: 25, coupling: 1e5 };
  expect(without('cold or hot bank').bank).toEqual({
    voltage: 24,
    cabinet: { heatCapacity: 250, insulation: 0, ventilation: 0, heatedBy },
  });
  const indoors = { ...full, bank: { voltage: 24 } } as Site;
  expect(without('cold or hot bank', indoors).bank.cabinet).toEqual({ insulation: 0, ventilation: 0, heatedBy });
});

test('a direct connection gives way to a tracker that loses nothing, with the same current limit', () => {
  const direct = withArray({ controller: { kind: 'direct', maxCurrent: 30, nightDraw: 1 } });
  expect(without('direct connection', direct).arrays[0]!.controller).toEqual({
    kind: 'maximum-power',
    maxVoltage: 1e6,
    maxCurrent: 30,
    efficiency: 1,
    nightDraw: 1,
  });
  const unlimited = withArray({ controller: { kind: 'direct', nightDraw: 1 } });
  expect(without('direct connection', unlimited).arrays[0]!.controller.maxCurrent).toBe(1e6);
  // What a direct connection does not convert it does not lose.
  expect(without('controller conversion', direct)).toEqual(direct);
});

test('what a design has not cannot be left out', () => {
  const plain = withArray({ mount: { kind: 'fixed' }, losses: { ...array.losses, age: 0 } });
  expect(isPresent(effect('tracker drive'), plain)).toBe(false);
  expect(isPresent(effect('ageing of the modules'), plain)).toBe(false);
  const { inverter, generator, ...dc } = full;
  for (const name of ['inverter idling', 'failed starts'])
    expect(isPresent(effect(name), dc as Site), name).toBe(false);
  const silent = { ...full, inverter: { power: 4000, idle: 0 } } as unknown as Site;
  expect(isPresent(effect('inverter idling'), silent)).toBe(false);
});

test('only snow depends on whether any lies', () => {
  expect(effects.filter(({ ofSnow }) => ofSnow).map(({ name }) => name)).toEqual([
    'snow on the array',
    'snow left lying',
  ]);
});
