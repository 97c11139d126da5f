import { expect, test } from 'vitest';
import type { Costs } from './costs-section.js';
import { costOfEngine, engineYear, judgementPrices } from './judgement-prices.js';

// Every price in this file is invented.
const costs: Costs = {
  ...{ years: 20, discountRate: 0, fuelEscalation: 0, arrayPerKW: 600, bankPerKWh: 200 },
  engine: { price: 1800, lifeH: 2000, lifeYears: 15, servicePerH: 0.4, alreadyThere: true },
  store: {
    ...{ inPerKW: 1500, keptPerKWh: 20, outPerKW: 2500, inYears: 12, keptYears: null, outYears: 8 },
    ...{ upkeepPerYear: 100, other: 500 },
  },
};

test('a part without a life lasts as long as the comparison, and a larger array is bought with the store', () => {
  const prices = judgementPrices(costs, 1.6, 900)!;
  expect(prices.store).toEqual({
    ...{ converterInPerKW: 1500, storePerKWh: 20, converterOutPerKW: 2500, upkeepPerYear: 100, otherFirstCost: 1400 },
    ...{ converterInYears: 12, storeYears: 20, converterOutYears: 8 },
  });
  expect(prices.terms).toEqual({ years: 20, discountRate: 0 });
  expect(prices.engine).toMatchObject({ fuelPerL: 1.6, servicePerH: 0.4, replacement: 1800, firstCost: 0 });
  const others = { ...costs.store!, inYears: null, keptYears: 30, outYears: null };
  expect(judgementPrices({ ...costs, store: others }, null, 0)!.store).toMatchObject({
    ...{ converterInYears: 20, storeYears: 30, converterOutYears: 20, otherFirstCost: 500 },
  });
});

test('without prices, years or a store there is nothing to judge by', () => {
  expect(judgementPrices(null, 1.6, 0)).toBeNull();
  expect(judgementPrices({ ...costs, years: null }, 1.6, 0)).toBeNull();
  expect(judgementPrices({ ...costs, store: null }, 1.6, 0)).toBeNull();
});

test('an engine wears by its hours or its years, one without prices by the usual twenty', () => {
  expect(engineYear(220, 250, costs)).toEqual({
    ...{ fuelLitresPerYear: 220, hoursPerYear: 250, lifeH: 2000, lifeYears: 15 },
  });
  // 250 hours in each of 20 years, or of one where no length is said.
  const unpriced = { ...costs, engine: null };
  expect(engineYear(220, 250, unpriced)).toMatchObject({ lifeH: 5000, lifeYears: 20 });
  expect(engineYear(220, 250, { ...unpriced, years: null })).toMatchObject({ lifeH: 250, lifeYears: 20 });
  expect(engineYear(220, 250, null)).toMatchObject({ lifeH: 250, lifeYears: 20 });
});

// 220 L at 1.6 and 250 h at 0.4 are 452 a year. At 250 h a year 2000 h are gone in 8 years: bought in years 8 and 16, of
// which half is left in year 20.
test('letting the engine go on costs its fuel, its service and its replacements', () => {
  const use = engineYear(220, 250, costs);
  expect(costOfEngine(use, costs, 1.6)!.total).toBeCloseTo(20 * 452 + 2 * 1800 - 900, 6);
  const unpriced = { ...costs, engine: null };
  expect(costOfEngine(engineYear(220, 250, unpriced), unpriced, 1.6)!.total).toBeCloseTo(20 * 352, 6);
  expect(costOfEngine(use, null, 1.6)).toBeNull();
  expect(costOfEngine(use, costs, null)).toBeNull();
  expect(costOfEngine(use, { ...costs, years: null }, 1.6)).toBeNull();
});
