import { expect, test } from 'vitest';
import { gasEnergyWh, waterGramsPerAh, waterLossGrams, waterSplittingV } from './water.js';

// Faraday: 0.336 g of water per ampere-hour and cell, the figure of the trade.
test('one ampere-hour of gassing takes a third of a gram of water from each cell', () => {
  expect(waterGramsPerAh).toBeCloseTo(0.336, 3);
  expect(waterLossGrams(100, 12, 0)).toBeCloseTo(403, 0);
  expect(waterLossGrams(100, 12, 0.98)).toBeCloseTo(8.07, 1);
});

// Thermoneutral voltage of water electrolysis at 25 degC, 1.481 V in textbooks of electrochemistry (from memory).
test('gas carries out the heat of formation of the water it came from', () => {
  expect(waterSplittingV).toBeCloseTo(1.481, 3);
  expect(gasEnergyWh(100, 12, 0)).toBeCloseTo(100 * 12 * 1.481, 0);
  expect(gasEnergyWh(100, 12, 1)).toBe(0);
  // At a float voltage of 2.25 V a cell two thirds of what gassing takes leave with the gas.
  expect(gasEnergyWh(1, 1, 0) / 2.25).toBeCloseTo(0.66, 2);
});
