import { type Site, SiteError } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { ratedKW } from '../cost/bill.js';
import { inventedSite } from '../site.fixture.js';
import { rivalDesigns, tryRivals } from './rivals.js';

const { base } = inventedSite();
const items = [
  { name: 'radio', energyWhYear: 175_200 },
  { name: 'freezer', energyWhYear: 315_360 },
  { name: 'lights', energyWhYear: 150_000 },
];
const designs = (site: Site, of = items) => rivalDesigns({ site, load: { items: of } } as unknown as YearResult);
const named = (site: Site, kind: string, of = items) => designs(site, of).filter((rival) => rival.kind === kind);
const roof = base.arrays[0]!;

// One string is two modules of 32.5 V x 9.24 A, 0.6 kW; two of them stand there.
test('more array is one string more, or a fifth, a half or all of it', () => {
  const rivals = named(base, 'array');
  expect(rivals.map(({ name }) => name)).toEqual([
    ...['one more string (0.6 kW)', 'array 20 % larger', 'array 50 % larger', 'array 100 % larger'],
  ]);
  const shares = rivals.map(({ site }) => Number((ratedKW(site) / ratedKW(base)).toFixed(9)));
  expect(shares).toEqual([1.5, 1.2, 1.5, 2]);
  expect(rivals[0]!.site.arrays[0]!.strings).toBe(3);
});

test('the string goes to the array with most power, and to none where no modules are', () => {
  const many = { ...roof, name: 'wall', strings: 5, inSeries: 1 };
  const spare = { ...roof, name: 'spare', strings: 0, inSeries: 20 };
  const more = named({ ...base, arrays: [spare, roof, many] } as Site, 'array')[0]!;
  expect(more.site.arrays.map(({ strings }) => strings)).toEqual([0, 2, 6]);
  expect(more.name).toBe('one more string (0.3 kW)');
  // Of two alike the first.
  const alike = named({ ...base, arrays: [roof, { ...roof, name: 'twin' }] } as Site, 'array')[0]!;
  expect(alike.site.arrays.map(({ strings }) => strings)).toEqual([3, 2]);
  expect(named({ ...base, arrays: [spare] } as Site, 'array')).toEqual([]);
});

test('a steeper winter tilt is told with what it was, of each array that has one and modules', () => {
  const [one] = named(base, 'tilt');
  expect(one!.name).toBe('winter tilt 60 instead of 45');
  expect(one!.site.arrays[0]!.mount).toMatchObject({ kind: 'seasonal', tilts: [{ from: 263, tilt: 60 }, {}] });
  const wall = { ...roof, name: 'wall', mount: { kind: 'fixed', tilt: 80, azimuth: 180 } };
  const upright = { ...roof, name: 'upright', mount: { kind: 'fixed', tilt: 90, azimuth: 180 } };
  const spare = { ...roof, name: 'spare', strings: 0 };
  const three = { ...base, arrays: [roof, wall, upright, spare] } as Site;
  expect(named(three, 'tilt').map(({ name }) => name)).toEqual([
    'steeper winter tilts: 60 instead of 45, 90 instead of 80',
  ]);
  expect(named(three, 'tilt')[0]!.site.arrays.slice(2)).toEqual([upright, spare]);
  expect(named({ ...base, arrays: [upright] } as Site, 'tilt')).toEqual([]);
  // South of the equator winter is in June.
  const south = { ...base, place: { ...base.place, latitude: -47 } } as Site;
  expect(named(south, 'tilt')[0]!.site.arrays[0]!.mount).toMatchObject({ tilts: [{ from: 80, tilt: 60 }, {}] });
});

test('a cabinet loses half the heat by half the watts per kelvin, or by twice the foam', () => {
  const cabinet = (insulation: unknown) =>
    ({ ...base, bank: { ...base.bank, cabinet: { ...base.bank.cabinet, insulation } } }) as Site;
  expect(named(base, 'bank')[0]!.site.bank.cabinet!.insulation).toBe(0.6);
  expect(named(cabinet({ foam: 50, area: 3 }), 'bank')[0]!.site.bank.cabinet!.insulation).toEqual({
    foam: 100,
    area: 3,
  });
  const { cabinet: _none, ...bank } = base.bank;
  expect(named({ ...base, bank } as Site, 'bank')).toEqual([]);
});

test('the four largest loads are left out one at a time, and nothing that is no load or draws nothing', () => {
  const rivals = named(base, 'load', [...items, { name: 'inverter', energyWhYear: 900_000 }]);
  expect(rivals.map(({ name }) => name)).toEqual([
    ...['without freezer (315 kWh)', 'without radio (175 kWh)', 'without lights (150 kWh)'],
  ]);
  expect(rivals[1]!.site.loads.map(({ name }) => name)).toEqual(['freezer', 'lights']);
  const loads = Array.from({ length: 6 }, (_, i) => ({ name: `lamp ${i}` }));
  const lamps = { ...base, loads } as Site;
  const drawing = loads.map(({ name }, i) => ({ name, energyWhYear: 1000 * i }));
  expect(named(lamps, 'load', drawing).map(({ name }) => name.split(' ')[2])).toEqual(['5', '4', '3', '2']);
  expect(named(lamps, 'load', drawing.slice(0, 2)).map(({ name }) => name)).toEqual(['without lamp 1 (1 kWh)']);
});

const yearOf = (hours: number, fuelLitres: number, limits: object[] = []) =>
  ({
    ...{ site: base, load: { items: [] }, limits },
    summary: {
      generator: { hours, fuelLitres },
      load: { darkKWh: 3 },
      throttle: { kWh: 44 },
      bank: { maxTemp: 31 },
    },
  }) as unknown as YearResult;

test('a rival tells what it saves against the design as it is', () => {
  const rivals = tryRivals(yearOf(250, 220), () => yearOf(190, 160), null);
  expect(rivals.map(({ kind }) => kind)).toEqual(['array', 'array', 'array', 'array', 'tilt', 'bank']);
  expect(rivals[0]).toEqual({
    ...{ kind: 'array', name: 'one more string (0.6 kW)', cost: null },
    ...{ generatorHours: 190, hoursSaved: 60, fuelLitres: 160, fuelSavedLitres: 60 },
    ...{ darkKWh: 3, throttledKWh: 44, warmestBankC: 31 },
  });
});

test('a rival over a limit must not be built, also where the design as it stands is over the same one', () => {
  const limit = (code: string, level = 'exceeded') => ({ code, level });
  const tried = (of: object[], rival: object[]) =>
    tryRivals(yearOf(250, 220, of), () => yearOf(190, 160, rival), null).length;
  expect(tried([], [limit('cold-voltage')])).toBe(0);
  expect(tried([limit('cold-voltage')], [limit('cold-voltage')])).toBe(0);
  expect(tried([limit('cold-voltage')], [])).toBe(6);
  expect(tried([limit('cold-voltage')], [limit('cold-voltage'), limit('short-circuit')])).toBe(0);
  expect(tried([], [limit('cold-voltage', 'near')])).toBe(6);
});

test('a bank that grows warmer than its model goes is left out; any other failure is one', () => {
  const failing = (error: Error) => (site: Site) => {
    if (site.bank.cabinet!.insulation === 0.6) throw error;
    return yearOf(190, 160);
  };
  for (const error of [new RangeError('too warm'), new SiteError('a.yaml', [])]) {
    const rivals = tryRivals(yearOf(250, 220), failing(error), null);
    expect(rivals.map(({ kind }) => kind)).toEqual(['array', 'array', 'array', 'array', 'tilt']);
  }
  expect(() => tryRivals(yearOf(250, 220), failing(new Error('lost')), null)).toThrow('lost');
  const outOfRange = () => {
    throw new RangeError('no such array');
  };
  expect(() => tryRivals(yearOf(250, 220), outOfRange, null)).toThrow('no such array');
});
