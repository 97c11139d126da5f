import { expect, test } from 'vitest';
import { sizedStore } from '../store/seasonal-store.js';
import { type StorePrices, storeLifeCycle } from './store-cost.js';

// Every price in this file is invented: 2 kW in at 1000, 300 kWh kept at 10, 0.5 kW out at 3000.
const converter = { efficiency: 0.7, minimumLoad: 0, standbyW: 0 };
const store = sizedStore(
  { kind: 'own', converterIn: converter, standingLossPerH: 0, converterOut: converter },
  2000,
  300_000,
  500,
);
const prices: StorePrices = {
  ...{ converterInPerKW: 1000, storePerKWh: null, converterOutPerKW: 3000, upkeepPerYear: 40, otherFirstCost: 700 },
  ...{ converterInYears: 10, storeYears: 40, converterOutYears: 15 },
};

// Nothing is discounted. The converter in is bought again in year 10, and worn out at 20; the store has half of its life
// left; the converter out is bought again in year 15, and two thirds of it are left.
test('a store costs its parts, their replacements and upkeep, less what is left of them', () => {
  expect(storeLifeCycle(store, prices, 10, { years: 20, discountRate: 0 })).toEqual({
    ...{ firstCost: 700 + 2000 + 3000 + 1500, yearly: 800, replacements: 2000 + 1500 },
    ...{ salvage: 1500 + 1000, total: 7200 + 800 + 3500 - 2500 },
  });
});

test('prices below nothing are refused by name', () => {
  const terms = { years: 20, discountRate: 0 };
  for (const name of ['converterInPerKW', 'converterOutPerKW', 'upkeepPerYear', 'otherFirstCost'] as const) {
    expect(() => storeLifeCycle(store, { ...prices, [name]: -1 }, 10, terms)).toThrow(
      `${name} must be 0 or more, got -1`,
    );
  }
  expect(() => storeLifeCycle(store, prices, -1, terms)).toThrow('storePerKWh must be 0 or more, got -1');
});
