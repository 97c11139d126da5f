import { expect, test } from 'vitest';
import { type EngineYear, engineLifeCycle } from './engine-cost.js';

const prices = { fuelPerL: null, fuelEscalation: 0, servicePerH: 0.5, replacement: 1000, firstCost: 600 };

test('fuel, service, replacements and what is left of the last engine, by hand', () => {
  // 400 h a year of a 2000 h life: replaced in years 5, 10 and 15 of 18; two fifths are left.
  const cost = engineLifeCycle({ fuelLitresPerYear: 200, hoursPerYear: 400, lifeH: 2000 }, prices, 1.5, {
    years: 18,
    discountRate: 0,
  });
  expect(cost.firstCost).toBe(600);
  expect(cost.yearly).toBeCloseTo(18 * (300 + 200), 9);
  expect(cost.replacements).toBeCloseTo(3000, 9);
  expect(cost.salvage).toBeCloseTo(400, 9);
});

test('an engine that outlives the study is not bought again and leaves part of its own price', () => {
  const cost = engineLifeCycle({ fuelLitresPerYear: 20, hoursPerYear: 50, lifeH: 2000 }, prices, 1.5, {
    years: 10,
    discountRate: 0,
  });
  expect(cost.replacements).toBe(0);
  expect(cost.salvage).toBeCloseTo(0.75 * 600, 9);
});

const engine = { fuelLitresPerYear: 200, hoursPerYear: 400, lifeH: 2000 };
const terms = { years: 18, discountRate: 0 };

test('an engine ends by its hours or its years, whichever is sooner, and one that never runs by its years alone', () => {
  const replaced = (over: Partial<typeof engine> & { lifeYears?: number }) =>
    engineLifeCycle({ ...engine, ...over }, prices, 1.5, terms).replacements / 1000;
  // Every 5 years by its hours: 5, 10, 15. Every 4 years: 4, 8, 12, 16.
  expect([replaced({}), replaced({ lifeYears: 4 }), replaced({ lifeYears: 9 })]).toEqual([3, 4, 3]);
  expect([replaced({ hoursPerYear: 0 }), replaced({ hoursPerYear: 0, lifeYears: 9 })]).toEqual([0, 1]);
});

// Discounted at the rate at which the price rises, each year's fuel costs what the first does.
test('fuel may grow dearer than other prices', () => {
  const dearer = { ...prices, fuelEscalation: 0.05, servicePerH: 0 };
  const cost = engineLifeCycle(engine, dearer, 1.5, { years: 18, discountRate: 0.05 });
  expect(cost.yearly).toBeCloseTo(18 * 300, 9);
});

test('an engine or a price that cannot be is refused by name', () => {
  const refuse = (over: Partial<EngineYear>, price: Partial<typeof prices>, fuelPerL: number, words: string) =>
    expect(() => engineLifeCycle({ ...engine, ...over }, { ...prices, ...price }, fuelPerL, terms)).toThrow(words);
  refuse({ fuelLitresPerYear: -1 }, {}, 1, 'fuelLitresPerYear');
  refuse({ hoursPerYear: 8785 }, {}, 1, 'hoursPerYear');
  refuse({ lifeH: 9 }, {}, 1, 'lifeH');
  refuse({ lifeYears: 0.5 }, {}, 1, 'lifeYears');
  refuse({}, { servicePerH: -1 }, 1, 'servicePerH');
  refuse({}, { replacement: -1 }, 1, 'replacement');
  refuse({}, { firstCost: -1 }, 1, 'firstCost');
  refuse({}, {}, -1, 'fuelPerL');
});
