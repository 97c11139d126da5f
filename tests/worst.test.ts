import { worstText } from '@wintergap/report';
import { changedDesign, parseSite } from '@wintergap/site';
import { leaveOff } from '@wintergap/study';
import { simulateSite, worstSpell } from '@wintergap/year';
import { expect, test } from 'vitest';

// An invented place.
const text = (loads: string, bank: string, engine: string) => `
name: Stony Ridge cabin
place: { latitude: 45.3, longitude: -84.6, utcOffset: -5 h }
units: us
weather: { seed: 5, months: { irradiation: [1.5 kWh/m2, 2.5 kWh/m2, 3.8 kWh/m2, 4.9 kWh/m2, 5.7 kWh/m2, 6.2 kWh/m2,
                                            6.1 kWh/m2, 5.2 kWh/m2, 3.9 kWh/m2, 2.5 kWh/m2, 1.5 kWh/m2, 1.2 kWh/m2],
                              air: [-8 degC, -7 degC, -2 degC, 6 degC, 13 degC, 18 degC,
                                    21 degC, 20 degC, 15 degC, 8 degC, 2 degC, -5 degC] } }
snow: { cover: none }
arrays:
  - name: roof
    module: { power: 400 W, vmp: 31 V, imp: 12.9 A, voc: 37.2 V, isc: 13.7 A, cells: 54 }
    inSeries: 3
    strings: 1
    mount: { kind: fixed, tilt: 60, azimuth: south }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 60 A }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: ${bank}, floor: 50 % }
${loads}${engine}`;
const engine = `
generator:
  output: { bus: dc, power: 2 kW }
  fuel: { kind: petrol, atFull: 1.2 L/h, idle: 0.4 L/h }
  start: { below: 55 % }
  stop: { above: 80 % }
`;
const house = parseSite(
  text(
    `loads:
  - { name: circulators, power: 60 W, bus: dc, when: { outdoorBelow: 55 degF } }
  - { name: workshop, power: 700 W, perDay: 2 h, bus: dc, standby: 2 W }
  - { name: lights, power: 25 W, bus: dc }
events: [{ name: party, on: dullest spell, at: 14, lasts: 10 h, energy: 6 kWh, bus: dc }]`,
    '500 Ah',
    engine,
  ),
  'ridge.yaml',
);
const own = simulateSite(house.base);
const spell = worstSpell(own);
const left = leaveOff(own, spell);

test('what the page says of loads left off is what a site file with them left off does', () => {
  expect(left.asDesigned.engineHours).toBeGreaterThan(1);
  expect(left.enough).not.toBeNull();
  // Written as a user would, by the dates of the answer.
  const dates = { from: left.from, to: left.to };
  const off = left.enough!.map((name) => [`${name === 'party' ? 'events' : 'loads'}.${name}.off`, [dates]]);
  const { ledger } = simulateSite(changedDesign(house, Object.fromEntries(off)));
  const hours = Array.from(ledger.generatorH).filter((_, h) => {
    const day = (Math.floor(h / 24) - spell.firstDay + 365) % 365;
    return day < 14;
  });
  expect(hours).toHaveLength(14 * 24);
  expect(hours.reduce((sum, h) => sum + h, 0)).toBeLessThan(0.005);
});

test('what does not follow the cold comes first, the largest first, standby among what it asks for', () => {
  const names = left.loads.map(({ name }) => name);
  expect(names.at(-1)).toBe('circulators');
  expect(left.loads.at(-1)!.followsCold).toBe(true);
  const others = left.loads.slice(0, -1).map(({ loadKWh }) => loadKWh);
  expect(others).toEqual(others.toSorted((a, b) => b - a));
  const workshop = left.loads.find(({ name }) => name === 'workshop')!;
  expect(workshop.loadKWh).toBeCloseTo(14 * (0.7 * 2 + 0.002 * 22), 6);
  const hours = left.loads.map(({ withAllBefore }) => withAllBefore.engineHours);
  expect(hours[0]!).toBeLessThanOrEqual(left.asDesigned.engineHours);
});

test('the page fits 80 columns, says how the days are chosen, and has US units', () => {
  const page = worstText(own, spell, left, 'us');
  for (const line of page.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  const flowing = page.replace(/\s+/g, ' ');
  expect(flowing).toMatch(/^Stony Ridge cabin, the 14 days from \d+ \w+ to \d+ \w+: the engine runs [\d.]+ h/);
  expect(flowing).toContain("days of the file's year with the least sun for the load");
  // Every load of the cabin has to go: nobody wants to read them all.
  expect(left.enough).toHaveLength(left.loads.length);
  expect(flowing).toContain('only with all loads left off does the engine rest');
  expect(page).toContain('degF');
  expect(flowing).toContain('Why the engine starts: the charge was down to 55 %');
});

test('a radio that nothing but the sun feeds is told in Wh, and by what stays dark', () => {
  const radio = parseSite(
    text('loads: [{ name: radio, power: 25 W, bus: dc }, { name: lamp, power: 8 W, bus: dc }]', '30 Ah', ''),
    'radio.yaml',
  );
  const small = {
    ...radio.base,
    arrays: radio.base.arrays.map((array) => ({
      ...array,
      module: { ...array.module, imp: 0.3, isc: 0.32, power: 9.3 },
    })),
  };
  const year = simulateSite(small);
  const days = worstSpell(year, 5);
  const told = leaveOff(year, days);
  expect(told.asDesigned.darkKWh).toBeGreaterThan(0.1);
  const page = worstText(year, days, told, 'metric');
  expect(page).toMatch(/\bWh\b/);
  expect(page.replace(/\s+/g, ' ')).toMatch(/Wh stay dark/);
});
