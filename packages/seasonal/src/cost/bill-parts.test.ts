import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { arraysPrice, billOf, costsFor, engineOf, labelledKWh, ratedKW, unpricedNames } from './bill.js';
import type { Costs } from './costs-section.js';

// Every price in this file is invented. Four modules of 32.5 V x 9.24 A are 1.2012 kW, 24 V x 600 Ah 14.4 kWh.
const { base } = inventedSite();
const roof = base.arrays[0]!;
const none: Costs = {
  ...{ years: null, discountRate: 0, fuelEscalation: 0, arrayPerKW: null, bankPerKWh: null, engine: null, store: null },
};
const withRoof = (...changes: object[]): Site =>
  ({ ...base, arrays: changes.map((change) => ({ ...roof, ...change })) }) as Site;
const pricesOf = (site: Site, costs = none) =>
  Object.fromEntries(billOf(site, costs).map(({ part, price }) => [part, price]));
const lineOf = (site: Site, part: string) => billOf(site, none).find((line) => line.part === part)!;

test('rated power and labelled energy of a design', () => {
  expect(ratedKW(base)).toBeCloseTo(1.2012, 12);
  expect(ratedKW(withRoof({}, { strings: 5, inSeries: 1 }))).toBeCloseTo(9 * 0.3003, 12);
  expect(labelledKWh(base)).toBeCloseTo(14.4, 12);
});

test('everything a design has is on its bill, with nothing for what has no price', () => {
  expect(pricesOf(base)).toEqual({
    ...{ array: null, mount: null, controller: null, bank: null, cabinet: null, inverter: null, engine: null },
  });
  const { generator: _engine, inverter: _inverter, ...bare } = base;
  const { cabinet: _cabinet, ...bank } = base.bank;
  expect(Object.keys(pricesOf({ ...bare, bank } as Site))).toEqual(['array', 'mount', 'controller', 'bank']);
  // An array without strings is not bought.
  expect(Object.keys(pricesOf(withRoof({ strings: 0 })))).not.toContain('array');
  expect(unpricedNames(base, none)).toEqual([
    ...['array "roof"', 'fixed mount of "roof"', 'controller of "roof"', 'bank', 'cabinet', 'inverter', 'engine'],
  ]);
  expect(unpricedNames(base, { ...none, arrayPerKW: 500, bankPerKWh: 0 })).toEqual(['cabinet', 'inverter', 'engine']);
});

test('a price is one of the thing, of a module each, or of its kilowatts and kilowatt-hours', () => {
  const module = (price: unknown) => withRoof({ module: { ...roof.module, price } });
  expect(pricesOf(module(180)).array).toBe(720);
  expect(pricesOf(module({ perKW: 500 })).array).toBeCloseTo(600.6, 9);
  const mount = (price: unknown) => withRoof({ mount: { ...roof.mount, price } });
  expect(pricesOf(mount(900)).mount).toBe(900);
  expect(pricesOf(mount({ perKW: 100 })).mount).toBeCloseTo(120.12, 9);
  const bank = (price: unknown) => ({ ...base, bank: { ...base.bank, price } }) as Site;
  expect(pricesOf(bank(2000)).bank).toBe(2000);
  expect(pricesOf(bank({ perKWh: 200 })).bank).toBeCloseTo(2880, 9);
  const inverter = { ...base.inverter!, price: { perKW: 300 } };
  expect(pricesOf({ ...base, inverter } as Site).inverter).toBeCloseTo(600, 9);
});

test('the price of all array stands for its mount and controller too, unless they have their own or turn', () => {
  const costs = { ...none, arrayPerKW: 500 };
  const of = (change: object) =>
    billOf(withRoof(change), costs)
      .map(({ part, price }) => [part, price])
      .slice(0, 3);
  expect(of({})[0]![1]).toBeCloseTo(600.6, 9);
  expect(of({})[1]).toEqual(['bank', null]);
  expect(of({ mount: { ...roof.mount, price: 900 } })[1]).toEqual(['mount', 900]);
  expect(of({ mount: { kind: 'seasonal', azimuth: 180, tilts: [] } })[1]).toEqual(['bank', null]);
  expect(of({ mount: { kind: 'pole', tilt: 40, turn: 200 } })[1]).toEqual(['mount', null]);
  expect(of({ controller: { ...roof.controller, price: 450 } })[1]).toEqual(['controller', 450]);
  // Modules with a price of their own leave mount and controller to be priced.
  expect(of({ module: { ...roof.module, price: 100 } })).toEqual([
    ['array', 400],
    ['mount', null],
    ['controller', null],
  ]);
});

test('upkeep is by the year, of every module, and lives are in years', () => {
  const kept = { upkeep: 3 / 8760, lives: 10 * 8760 };
  const array = lineOf(withRoof({ module: { ...roof.module, ...kept } }), 'array');
  expect(array.upkeepPerYear).toBeCloseTo(12, 9);
  expect(array.livesYears).toBeCloseTo(10, 9);
  expect(lineOf(base, 'array')).toMatchObject({ upkeepPerYear: 0, livesYears: null });
  const engine = { ...base.generator!, upkeep: 20 / 8760, lives: { years: 9 } };
  // An engine's life goes with its use.
  expect(lineOf({ ...base, generator: engine } as Site, 'engine')).toMatchObject({
    ...{ upkeepPerYear: expect.closeTo(20, 9), livesYears: null },
  });
});

const section = { price: 900, lifeH: 1500, lifeYears: 12, servicePerH: 0.5, alreadyThere: true };

test('an engine has its own price and life before those of the section', () => {
  const engine = (change: object, of: Costs['engine'] = null) =>
    engineOf({ ...base, generator: { ...base.generator!, ...change } } as Site, { ...none, engine: of });
  expect(engine({})).toBeNull();
  expect(engine({}, section)).toEqual(section);
  // 2 kW at 700 a kilowatt.
  expect(engine({ price: { perKW: 700 } })).toEqual({
    ...{ price: 1400, lifeH: null, lifeYears: 20, servicePerH: 0, alreadyThere: false },
  });
  expect(engine({ price: 0 })).toMatchObject({ price: 0 });
  expect(engine({ price: 1200, lives: { runningH: 3000, years: 8 } }, section)).toEqual({
    ...section,
    ...{ price: 1200, lifeH: 3000, lifeYears: 8 },
  });
  // Oil for 25 every 100 h, an overhaul for 400 every 2000 h, and one that costs nothing.
  const served = { price: 1, oil: { every: 100, price: 25 }, overhaul: { every: 2000, price: 400 } };
  expect(engine(served)!.servicePerH).toBeCloseTo(0.25 + 0.2, 12);
  expect(engine({ ...served, overhaul: { every: 2000 } })!.servicePerH).toBeCloseTo(0.25, 12);
  const { generator: _engine, ...without } = base;
  expect(engineOf(without as Site, none)).toBeNull();
  expect(engineOf(without as Site, { ...none, engine: section })).toEqual(section);
  expect(costsFor(base, { ...none, years: 7, engine: section })).toEqual({ ...none, years: 7, engine: section });
});

test('the price of all arrays is known where that of their modules is', () => {
  const priced = { module: { ...roof.module, price: 100 }, controller: { ...roof.controller, price: 450 } };
  expect(arraysPrice(withRoof(priced), none)).toBe(850);
  expect(arraysPrice(withRoof(priced, { ...priced, mount: { ...roof.mount, price: 60 } }), none)).toBe(1760);
  expect(arraysPrice(withRoof(priced, {}), none)).toBeNull();
  expect(arraysPrice(withRoof(priced, { strings: 0 }), none)).toBe(850);
  expect(arraysPrice(base, { ...none, arrayPerKW: 500 })).toBeCloseTo(600.6, 9);
});
