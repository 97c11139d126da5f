import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readCosts } from '@wintergap/seasonal';
import { parseSite } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { costOf, leastCost, readSizeCosts } from './measure.js';

const file = join(import.meta.dirname, '../../../../examples/kettle-pond.yaml');
const text = readFileSync(file, 'utf8');
const site = parseSite(text, file);
const costs = readCosts(site)!;
const prepared = new PreparedCache();

// Six modules of 32.5 V x 9.24 A are 1.8018 kW, at 700 a kW 1261.26; 24 kWh at 180 are 4320, of which after 20 years at 3 %
// no more than 1.03^-20 = 0.553676 can be left: 1928.12. The engine is bought where it runs.
test('no design costs less than array and bank without the most that a bank can be worth at the end', () => {
  expect(leastCost(site.base, costs)).toBeCloseTo(1261.26 + 1928.12, 1);
});

test('rounding does not lift the bound above what it is reckoned from', () => {
  const reckoned = 1.8018 * 700 + 4320 * (1 - 1.03 ** -20);
  expect(leastCost(site.base, costs)).toBeLessThan(reckoned);
  expect(leastCost(site.base, costs)).toBeGreaterThan(reckoned - 0.001);
});

test('a thing with a life may be worth something at the end, one without is not', () => {
  const module = { ...site.base.arrays[0]!.module, lives: 25 * 8760 };
  const living = { ...site.base, arrays: [{ ...site.base.arrays[0]!, module }] };
  expect(leastCost(living, costs)).toBeCloseTo((1261.26 + 4320) * (1 - 0.553676), 1);
});

// At -1 % the bank may seem worth 0.99^-20 = 1.222625 of its price, and the engine of 1800 as much of its own.
test('where money grows less worth by itself, an engine may seem worth more at the end than was paid', () => {
  expect(leastCost(site.base, { ...costs, discountRate: -0.01 })).toBeCloseTo(
    1261.26 + 4320 * -0.222625 - 1800 * 1.222625,
    0,
  );
  expect(leastCost(site.base, { ...costs, discountRate: 0 })).toBeCloseTo(1261.26, 4);
  expect(leastCost(site.base, { ...costs, discountRate: -0.01, engine: null })).toBeCloseTo(
    1261.26 - 4320 * 0.222625,
    0,
  );
});

test('the bound is below what the year costs, which without a price has no end', () => {
  const year = simulateSite(site.base, prepared);
  const cost = costOf(year, costs);
  expect(cost).toBeGreaterThan(leastCost(site.base, costs));
  expect(cost).toBeLessThan(100_000);
  expect(costOf(year, { ...costs, bankPerKWh: null })).toBe(Infinity);
});

test('sizing by cost asks for the prices that it lacks', () => {
  expect(readSizeCosts(site, [], prepared)).toEqual(costs);
  const without = (key: RegExp) => parseSite(text.replace(key, ''), file);
  expect(() => readSizeCosts(without(/^costs:\n( .*\n)+/m), [], prepared)).toThrow(
    'size.least: least: cost needs a costs section',
  );
  expect(() => readSizeCosts(without(/^ {2}bank: 180 .*\n/m), [], prepared)).toThrow(/least: cost needs .*costs\.bank/);
  expect(() => readSizeCosts(site, [{ path: 'variant', values: ['fixed'] }], prepared)).toThrow(
    'size.least: least: cost needs a price for pole mount of "garden pole", which some of these designs have and others have not',
  );
});
