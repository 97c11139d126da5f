import { SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { readCosts } from './costs-section.js';

// Every price in this file is invented.
test('prices are read with their units, and lives in years', () => {
  const costs = readCosts(
    inventedSite(`
costs:
  years: 20
  discount: 3 %
  array: 0.6 /W
  bank: 200 /kWh
  engine: { price: 1800, life: 2000 h, service: 0.4 /h, alreadyThere: yes }
  fuelEscalation: 1 %
  store: { in: 1500 /kW, kept: 20 /kWh, out: 2500 /kW, lives: { in: 12 years, out: 60000 h }, upkeep: 100 /year }
`),
  );
  expect(costs).toMatchObject({
    years: 20,
    discountRate: 0.03,
    fuelEscalation: 0.01,
    bankPerKWh: 200,
    engine: { price: 1800, lifeH: 2000, lifeYears: 20, servicePerH: 0.4, alreadyThere: true },
    store: { inPerKW: 1500, keptPerKWh: 20, outPerKW: 2500, keptYears: null, other: 0 },
  });
  expect(costs!.arrayPerKW).toBeCloseTo(600, 9);
  expect(costs!.store!.inYears).toBeCloseTo(12, 9);
  expect(costs!.store!.outYears).toBeCloseTo(60000 / 8760, 9);
  expect(costs!.store!.upkeepPerYear).toBeCloseTo(100, 9);
});

test('nothing has a default price', () => {
  expect(readCosts(inventedSite())).toBeNull();
  expect(readCosts(inventedSite('\ncosts: {}\n'))).toEqual({
    years: null,
    discountRate: 0,
    fuelEscalation: 0,
    arrayPerKW: null,
    bankPerKWh: null,
    engine: null,
    store: null,
  });
});

test('what is wrong is reported together, each with its place in the file', () => {
  const site = inventedSite(`
costs:
  years: twenty
  array: 600
  stores: { in: 1500 /kW, out: 2500 /kW }
  store: { in: 1500 /kWh, out: 2500 /kW }
`);
  let error: unknown;
  try {
    readCosts(site);
  } catch (thrown) {
    error = thrown;
  }
  expect(error).toBeInstanceOf(SiteError);
  const problems = (error as SiteError).problems;
  expect(problems.map(({ path }) => path).sort()).toEqual(['costs', 'costs.array', 'costs.store.in', 'costs.years']);
  const text = (error as SiteError).message;
  expect(text).toMatch(/invented\.yaml:\d+:3: costs\.years: found "twenty"/);
  expect(text).toMatch(/costs\.array: 600 has no unit; write 600 \/kW/);
  expect(text).toMatch(/unknown key "stores"; did you mean "store"\?/);
});

test('a price on a thing of any design is a reason to reckon, with nothing else said', () => {
  const nothing = readCosts(inventedSite('\ncosts: {}\n'));
  for (const variant of [
    'bank: { price: 2000 }',
    'bank: { cabinet: { price: 300 } }',
    'inverter: { price: 400 }',
    'generator: { price: 1500 }',
    'arrays: [{ name: roof, module: { price: 180 } }]',
    'arrays: [{ name: roof, mount: { price: 900 } }]',
    'arrays: [{ name: roof, controller: { price: 450 } }]',
  ]) {
    expect(readCosts(inventedSite(`\nvariants: { other: { ${variant} } }\n`)), variant).toEqual(nothing);
  }
  expect(readCosts(inventedSite('\nvariants: { other: { bank: { capacity: 800 Ah } } }\n'))).toBeNull();
});

test('an engine or a store with few words has the rest open', () => {
  const { engine, store } = readCosts(
    inventedSite('\ncosts: { engine: { price: 1800 }, store: { in: 1500 /kW, out: 2500 /kW, other: 70 } }\n'),
  )!;
  expect(engine).toEqual({ price: 1800, lifeH: null, lifeYears: 20, servicePerH: null, alreadyThere: false });
  expect(store).toEqual({
    ...{ inPerKW: 1500, keptPerKWh: null, outPerKW: 2500, inYears: null, keptYears: null, outYears: null },
    ...{ upkeepPerYear: 0, other: 70 },
  });
  const aged = readCosts(inventedSite('\ncosts: { engine: { price: 1, lifeYears: 12 years } }\n'))!;
  expect(aged.engine!.lifeYears).toBeCloseTo(12, 9);
});

test.each([
  ['years: 201', 'costs.years'],
  ['years: 0', 'costs.years'],
  ['discount: 51 %', 'costs.discount'],
  ['fuelEscalation: -21 %', 'costs.fuelEscalation'],
  ['array: -1 /kW', 'costs.array'],
  ['bank: 2000000000 /kWh', 'costs.bank'],
  ['engine: { price: -1 }', 'costs.engine.price'],
  ['engine: { price: 1, life: 9 h }', 'costs.engine.life'],
  ['engine: { price: 1, lifeYears: 101 years }', 'costs.engine.lifeYears'],
  ['engine: { price: 1, service: -1 /h }', 'costs.engine.service'],
  ['store: { in: 1 /kW, out: 1 /kW, lives: { in: 201 years } }', 'costs.store.lives.in'],
  ['store: { in: 1 /kW, out: 1 /kW, upkeep: -1 /h }', 'costs.store.upkeep'],
])('%s is refused with its place', (written, place) => {
  expect(() => readCosts(inventedSite(`\ncosts: { ${written} }\n`))).toThrow(place);
});
