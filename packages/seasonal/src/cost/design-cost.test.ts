import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { readCosts } from './costs-section.js';
import { engineLifeH, lifeCycleOfDesign } from './design-cost.js';

// Every price in this file is invented. The array is 4 modules of 32.5 V x 9.24 A, the bank 24 V x 600 Ah.
const arrayKW = (4 * 32.5 * 9.24) / 1000;
const bankKWh = 14.4;
const yearOf = (hours: number, fuelLitres: number) => ({
  generator: { hours, fuelLitres, starts: 0, fuelCost: null, toBusKWh: 0, months: [] },
});
const priced = (costs: string) => {
  const site = inventedSite(`\ncosts: ${costs}\n`);
  return { site: site.base, costs: readCosts(site)! };
};

// ASTM E917 by hand, no discounting: each payment counts in full.
test('array, bank, engine, fuel and service add up by hand when nothing is discounted', () => {
  const { site, costs } = priced(
    '{ years: 20, array: 500 /kW, bank: 100 /kWh, engine: { price: 1000, life: 1000 h, service: 0.5 /h } }',
  );
  const cost = lifeCycleOfDesign(yearOf(100, 80), site, costs, 8);
  const first = arrayKW * 500 + bankKWh * 100 + 1000;
  expect(cost.missing).toEqual([]);
  expect(cost.firstCost).toBeCloseTo(first, 9);
  expect(cost.runningPerYear).toBeCloseTo(80 * 1.6 + 50, 9);
  // The bank is bought again after 8 and 16 years, half its life is left; the engine after 10, and nothing is left.
  const total = first + 20 * (80 * 1.6 + 50) + 2 * bankKWh * 100 + 1000 - (bankKWh * 100) / 2;
  expect(cost.lifeCycle!.total).toBeCloseTo(total, 6);
  expect(cost.perYear).toBeCloseTo(total / 20, 6);
});

// By hand, no discounting, 30 years: 50 h a year would make 2000 h last 40 years, but it is bought again after 20 and is
// half worn at the end; 15 years written: after 15, and worn out at the end.
test.each([
  ['life: 2000 h', 1000 + 1000 - 500],
  ['life: 2000 h, lifeYears: 15 years', 1000 + 1000],
  ['life: 500 h, lifeYears: 15 years', 1000 + 2000],
])('an engine of %s is replaced by its hours or its years, whichever come first', (life, total) => {
  const { site, costs } = priced(`{ years: 30, array: 0 /kW, bank: 0 /kWh, engine: { price: 1000, ${life} } }`);
  expect(lifeCycleOfDesign(yearOf(50, 0), site, costs, 8).lifeCycle!.total).toBeCloseTo(total, 6);
});

test('a price that is not there leaves its cost open and is named', () => {
  const { site, costs } = priced('{ years: 20, array: 500 /kW, engine: { price: 1000 } }');
  const cost = lifeCycleOfDesign(yearOf(100, 80), site, costs, 8);
  expect(cost).toMatchObject({ firstCost: null, lifeCycle: null, perYear: null, missing: ['costs.bank'] });
  expect(cost.runningPerYear).toBeCloseTo(128, 9);
});

test('a design without an engine needs no price of engine or fuel', () => {
  const site = inventedSite('\ncosts: { years: 10, array: 500 /kW, bank: 100 /kWh }\n', '');
  const cost = lifeCycleOfDesign(yearOf(0, 0), site.base, readCosts(site)!, 10);
  expect(cost.lifeCycle!.total).toBeCloseTo(arrayKW * 500 + bankKWh * 100, 9);
  expect(cost.runningPerYear).toBe(0);
});

test('an engine that stands there already is not bought, but replaced when it is worn out', () => {
  const there = priced(
    '{ years: 20, array: 0 /kW, bank: 0 /kWh, engine: { price: 1000, life: 1500 h, alreadyThere: yes } }',
  );
  const cost = lifeCycleOfDesign(yearOf(100, 0), there.site, there.costs, 8);
  // Worn out after 15 years; two thirds of the second one are left at 20.
  expect(cost.firstCost).toBe(0);
  expect(cost.lifeCycle!.total).toBeCloseTo(1000 - (1000 * 10) / 15, 6);
});

const allPriced = 'array: 500 /kW, bank: 100 /kWh, engine: { price: 1000, life: 1000 h, service: 0.5 /h }';

test('the life of a bank is held to between a month and a thousand years', () => {
  const { site, costs } = priced(`{ years: 20, ${allPriced} }`);
  const bankYears = (years: number) => lifeCycleOfDesign(yearOf(0, 0), site, costs, years).bankYears;
  expect([0.001, 0.1, 7, 1000, Number.POSITIVE_INFINITY].map(bankYears)).toEqual([0.1, 0.1, 7, 1000, 1000]);
});

test('without a length there is a first cost and a running cost, and nothing over the years', () => {
  const { site, costs } = priced(`{ ${allPriced} }`);
  const cost = lifeCycleOfDesign(yearOf(100, 80), site, costs, 8);
  expect(cost).toMatchObject({ missing: ['costs.years'], lifeCycle: null, known: null, perYear: null });
  expect(cost.firstCost).toBeCloseTo(arrayKW * 500 + bankKWh * 100 + 1000, 9);
  expect(cost.runningPerYear).toBeCloseTo(178, 9);
});

test('fuel that is burnt needs a price, fuel that is not does not', () => {
  const { costs, site } = priced(`{ years: 20, ${allPriced} }`);
  const fuel = { ...site.generator!.fuel, price: undefined };
  const unpriced = { ...site, generator: { ...site.generator!, fuel } } as typeof site;
  expect(lifeCycleOfDesign(yearOf(100, 80), unpriced, costs, 8)).toMatchObject({
    ...{ missing: ['generator.fuel.price'], runningPerYear: null, lifeCycle: null, known: null },
  });
  expect(lifeCycleOfDesign(yearOf(0, 0), unpriced, costs, 8).missing).toEqual([]);
});

test('what has a price is summed whatever is missing beside it, and the rest is named', () => {
  const { site, costs } = priced('{ years: 20, array: 500 /kW }');
  const cost = lifeCycleOfDesign(yearOf(100, 0), site, costs, 8);
  expect(cost.missing).toEqual(['costs.bank', 'costs.engine']);
  expect(cost.known!.total).toBeCloseTo(arrayKW * 500, 9);
  expect(cost).toMatchObject({ firstCost: null, runningPerYear: null, lifeCycle: null });
  expect(cost.unpriced.map(({ part }) => part)).toEqual(['bank', 'cabinet', 'inverter', 'engine']);
});

// 3 % over 20 years: an even payment of 1 is worth 14.8775 today.
test('the yearly cost is the even payment that is worth the whole', () => {
  const { site, costs } = priced(`{ years: 20, discount: 3 %, ${allPriced} }`);
  const cost = lifeCycleOfDesign(yearOf(100, 80), site, costs, 8);
  expect(cost.lifeCycle!.total / cost.perYear!).toBeCloseTo(14.8775, 4);
});

test('an engine without a life lasts as long as the comparison, and ten hours at least', () => {
  expect([engineLifeH(2000, 100, 20), engineLifeH(null, 100, 20), engineLifeH(null, 0, 20)]).toEqual([2000, 2000, 10]);
});
