import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { wholeSweep } from '../design/order.js';
import { plannedNumber, planSweep } from './plan.js';

const file = join(import.meta.dirname, '../../../../examples/kettle-pond.yaml');
const text = readFileSync(file, 'utf8');
const planOf = (written: string, part = wholeSweep) => planSweep(parseSite(written, file), part);
const withoutCosts = text.replace(/^costs:\n( .*\n)+/m, '');

// Four strings by three capacities.
test('a part holds its share of the designs, and there is no part without one', () => {
  const plan = planOf(withoutCosts, { index: 2, of: 4 });
  expect([plan.order.gridSize, plan.positions]).toEqual([12, { from: 3, to: 6 }]);
  expect(plannedNumber(plan, 3)).toBe(4);
  expect(planOf(withoutCosts, { index: 12, of: 12 }).positions).toEqual({ from: 11, to: 12 });
  expect(() => planOf(withoutCosts, { index: 1, of: 13 })).toThrow(/sweep: found 12 designs for 13 parts/);
});

test('a cost is a column where all prices are there and no design has an unpriced thing that others have not', () => {
  const { columns, unpriced, unpricedApart } = planOf(text);
  expect(columns).toEqual({ cost: true, years: null });
  expect([unpriced, unpricedApart]).toEqual([['pole mount of "garden pole"', 'cabinet', 'inverter'], []]);
  expect(planOf(withoutCosts)).toMatchObject({ columns: { cost: false }, unpriced: [], unpricedApart: [] });
  expect(planOf(text.replace('  bank: 180 /kWh\n', '')).columns.cost).toBe(false);
  const variants = text.replace('sweep:\n  designs: {', 'sweep:\n  designs: { variant: [base, fixed],');
  expect(planOf(variants)).toMatchObject({ columns: { cost: false }, unpricedApart: ['pole mount of "garden pole"'] });
});

test('years that are asked for are columns and part of what tells the sweep from others', () => {
  const years = { count: 4, seed: 2 };
  const plan = planSweep(parseSite(withoutCosts, file), wholeSweep, years);
  expect(plan.columns.years).toEqual(years);
  expect(plan.fingerprint).not.toBe(planOf(withoutCosts).fingerprint);
});
