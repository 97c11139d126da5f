import { expect, test } from 'vitest';
import { waterGramsPerAh, waterLossGrams } from './water.js';

// Faraday: 0.336 g of water per ampere-hour and cell, the figure of the trade.
test('one ampere-hour of gassing takes a third of a gram of water from each cell', () => {
  expect(waterGramsPerAh).toBeCloseTo(0.336, 3);
  expect(waterLossGrams(100, 12, 0)).toBeCloseTo(403, 0);
  expect(waterLossGrams(100, 12, 0.98)).toBeCloseTo(8.07, 1);
});
