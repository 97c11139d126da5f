import { expect, test } from 'vitest';
import { engineLifeCycle } from './engine-cost.js';

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
