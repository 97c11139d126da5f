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
