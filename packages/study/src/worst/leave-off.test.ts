import { simulateSite, type WorstSpell } from '@wintergap/year';
import { expect, test } from 'vitest';
import { ridgeCabin } from '../ridge-cabin.fixture.js';
import { leaveOff } from './leave-off.js';

const siteOf = (loads: string, engine: boolean) =>
  ridgeCabin(`snow: { cover: none }
${loads}
${engine ? 'generator: { output: { bus: dc, power: 2 kW }, fuel: { kind: petrol, atFull: 1.2 L/h, idle: 0.4 L/h }, start: { below: 55 % }, stop: { above: 80 % } }' : ''}`);

/** Ten days over New Year, from 27 December (day 360). */
const spell = { firstDay: 360, days: new Array(10).fill({}) } as unknown as WorstSpell;
const off = (loads: string, engine = true) => leaveOff(simulateSite(siteOf(loads, engine)), spell);

const loads = `loads:
  - { name: circulators, power: 60 W, bus: dc, when: { outdoorBelow: 30 degC } }
  - { name: radio, power: 10 W, bus: dc }
  - { name: workshop, power: 100 W, bus: dc }
  - { name: nothing, power: 100 W, bus: dc, when: { season: { from: 06-01, to: 06-30 } } }
events: [{ name: party, on: 01-02, at: 14, lasts: 10 h, energy: 3 kWh, bus: dc }]`;

// Ten days of 100 W are 24 kWh, of 60 W 14.4, of 10 W 2.4; the party's 3 kWh fall into them.
test('what does not follow the cold is left off first, the largest first, until the engine need not run', () => {
  const left = off(loads);
  expect([left.from, left.to, left.hasMeasured]).toEqual(['12-27', '01-05', false]);
  const told = left.loads.map(({ name, kind, followsCold, loadKWh }) => [name, kind, followsCold, loadKWh]);
  expect(told).toEqual([
    ['workshop', 'appliance', false, expect.closeTo(24, 1)],
    ['party', 'event', false, expect.closeTo(3, 1)],
    ['radio', 'appliance', false, expect.closeTo(2.4, 1)],
    ['circulators', 'appliance', true, expect.closeTo(14.4, 1)],
  ]);
  // The first stands alone; each further one leaves no more to do for the engine, and all of them nothing.
  expect(left.asDesigned.engineHours).toBeGreaterThan(5);
  expect(left.asDesigned.darkKWh).toBeLessThan(0.005);
  expect(left.loads[0]!.withAllBefore).toEqual(left.loads[0]!.alone);
  const hours = [left.asDesigned.engineHours, ...left.loads.map(({ withAllBefore }) => withAllBefore.engineHours)];
  expect(hours).toEqual(hours.toSorted((a, b) => b - a));
  expect(hours.at(-1)).toBe(0);
  // The largest load relieves more than the smallest does, and none is enough alone.
  expect(left.loads[0]!.alone.engineHours).toBeLessThan(left.loads[2]!.alone.engineHours);
  expect(left.loads.every(({ alone }) => alone.engineHours > 0.005)).toBe(true);
  const last = hours.findIndex((of) => of < 0.005);
  expect(left.enough).toEqual(left.loads.slice(0, last).map(({ name }) => name));
});

test('of those that are enough alone the smallest is named, and a heating pump only where nothing else helps', () => {
  // 100 W are too much for the array by themselves; the bank holds through on less than 20 W.
  const one = off(
    'loads: [{ name: pump, power: 15 W, bus: dc, when: { outdoorBelow: 30 degC } }, { name: still, power: 200 W, bus: dc }]',
  );
  expect(one.enough).toEqual(['still']);
  const pump = off(
    'loads: [{ name: radio, power: 5 W, bus: dc }, { name: pump, power: 200 W, bus: dc, when: { outdoorBelow: 30 degC } }]',
  );
  expect(pump.enough).toEqual(['pump']);
});

test('without an engine the need is what stays dark', () => {
  const {
    asDesigned,
    enough,
    loads: told,
  } = off('loads: [{ name: still, power: 250 W, bus: dc }, { name: radio, power: 5 W, bus: dc }]', false);
  expect(asDesigned.engineHours).toBe(0);
  expect(asDesigned.darkKWh).toBeGreaterThan(1);
  // Of 255 W for ten days no more than 61.2 kWh can stay dark.
  expect(asDesigned.darkKWh).toBeLessThan(61.2);
  expect(told[0]!.alone.darkKWh).toBeLessThan(0.005);
  expect(enough).toEqual(['still']);
});
