import { expect, test } from 'vitest';
import { evenSalvage, lifeCycleCost } from './life-cycle-cost.js';

test('the total is first cost, yearly payments and replacements less salvage', () => {
  const cost = lifeCycleCost({
    firstCost: 1000,
    yearly: [
      { amount: 100, escalation: 0 },
      { amount: 10, escalation: 0.1 },
    ],
    replacements: [{ cost: 300, everyYears: 1 }],
    years: 2,
    discountRate: 0.1,
    salvage: 121,
  });
  // 100/1.1 + 100/1.21 + 10 + 10; 300/1.1; 121/1.21.
  expect(cost.yearly).toBeCloseTo(100 / 1.1 + 100 / 1.21 + 20, 10);
  expect(cost.replacements).toBeCloseTo(300 / 1.1, 10);
  expect(cost.salvage).toBeCloseTo(100, 10);
  expect(cost.total).toBeCloseTo(1000 + cost.yearly + cost.replacements - 100, 10);
});

test('what is left of a part falls evenly over its life', () => {
  expect(evenSalvage(1000, 25, 20)).toBeCloseTo(200, 10);
  // Bought at 0, 8 and 16; four of the last eight years are left.
  expect(evenSalvage(1000, 8, 20)).toBeCloseTo(500, 10);
  expect(evenSalvage(1000, 20, 20)).toBe(0);
  expect(evenSalvage(1000, 0.1, 1)).toBeCloseTo(0, 6);
});
