import {
  lifeCycleCost,
  presentValueOfPayment,
  presentValueOfReplacements,
  presentValueOfSeries,
} from '@wintergap/seasonal';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// Uniform present value factors as printed in tables to ASTM E917 and in NIST Handbook 135 and its yearly supplement,
// three decimals, from memory; beside each the closed form it follows from.
test.each<[rate: number, years: number, printed: number]>([
  [0.03, 20, 14.877],
  [0.03, 10, 8.53],
  [0.03, 25, 17.413],
  [0.05, 10, 7.722],
  [0.05, 20, 12.462],
  [0.07, 20, 10.594],
  [0.1, 20, 8.514],
])('at %d a year over %d years an even series is worth %d payments', (rate, years, printed) => {
  const factor = presentValueOfSeries(1, years, rate, 0);
  const table: Source = { from: 'NIST Handbook 135, uniform present value', sure: 'from memory' };
  holds(table, `worth of ${years} payments at ${100 * rate} %`, factor, printed, { within: 6e-4 });
  expect(factor).toBeCloseTo((1 - (1 + rate) ** -years) / rate, 12);
});

// Single present value factors, same tables, from memory.
test.each<[rate: number, year: number, printed: number]>([
  [0.03, 1, 0.971],
  [0.03, 10, 0.744],
  [0.03, 20, 0.554],
  [0.05, 10, 0.614],
  [0.07, 15, 0.362],
])('at %d a year one payment in year %d is worth %d of itself', (rate, year, printed) => {
  const table: Source = { from: 'NIST Handbook 135, single present value', sure: 'from memory' };
  holds(table, `worth of a payment in year ${year} at ${100 * rate} %`, presentValueOfPayment(1, year, rate), printed, {
    within: 6e-4,
  });
});

// ASTM E917 modified series: A0 ((1+e)/(d-e)) (1 - ((1+e)/(1+d))^n). Worked here: 100 a year, e 2 %, d 5 %, 15 years: 3400 x (1 - 0.64738).
test('an escalating series follows the modified uniform present value', () => {
  const closed = 100 * (1.02 / 0.03) * (1 - (1.02 / 1.05) ** 15);
  expect(closed).toBeCloseTo(1198.9, 1);
  const series: Source = { from: 'ASTM E917, modified uniform present value', sure: 'recomputed' };
  holds(series, '100 a year for 15 years at 5 %, rising by 2 %', presentValueOfSeries(100, 15, 0.05, 0.02), closed, {
    within: 1e-9,
  });
});

// Worked by hand with the printed factors: a 4000 purchase, 150 a year for 20 years (14.877), 900 again in years 7 and
// 14 (0.8131 and 0.6611), 500 left in year 20 (0.5537): 4000 + 2231.6 + 1326.8 - 276.8 = 7281.5.
test('a purchase with upkeep, replacements and salvage sums to its life-cycle cost', () => {
  const cost = lifeCycleCost({
    firstCost: 4000,
    yearly: [{ amount: 150, escalation: 0 }],
    replacements: [{ cost: 900, everyYears: 7 }],
    years: 20,
    discountRate: 0.03,
    salvage: 500,
  });
  const worked: Source = { from: 'printed factors, by hand', sure: 'recomputed' };
  holds(worked, 'purchase, upkeep, two replacements and salvage over 20 years at 3 %', cost.total, 7281.5, {
    within: 0.3,
  });
  expect(presentValueOfReplacements(900, 7, 20, 0.03)).toBeCloseTo(900 * (1.03 ** -7 + 1.03 ** -14), 9);
});
