import { expect, test } from 'vitest';
import { ridgeCabin } from '../ridge-cabin.fixture.js';
import { manyYears } from './many-years.js';
import { outlookOf } from './outlook.js';
import { createYearRunner } from './years.js';

const site = ridgeCabin('loads: [{ name: radio, power: 20 W, bus: dc }]');
const task = (years: number) => ({ site, weather: { kind: 'made', years, seed: 1, spread: 1 } as const });

test('every year is run once in its order, and told as it is done', async () => {
  const told: number[][] = [];
  const years = await manyYears(task(3), { onYear: (...of) => told.push(of) });
  expect(told).toEqual([
    [1, 3],
    [2, 3],
    [3, 3],
  ]);
  const run = createYearRunner(task(3));
  expect(years).toEqual([run(0), run(1), run(2)]);
  // One year starts no thread, however many are allowed.
  expect(await manyYears(task(1), { workers: 8 })).toEqual([run(0)]);
});

test('no years, and no threads, are out of range', async () => {
  await expect(manyYears(task(0))).rejects.toThrow('years must be a whole number from 1 to 10000');
  await expect(manyYears(task(2), { workers: 0 })).rejects.toThrow('workers must be a whole number from 1 to 256');
});

test('an outlook of made years has the year of the means beside it, and says what spread they have', async () => {
  const { ownYear, spread, years } = await outlookOf(task(2));
  expect(years).toHaveLength(2);
  expect(spread).not.toBeNull();
  // The means give 47.2 kWh/m2 a day in the sum of twelve months: some 1400 kWh/m2 a year.
  expect(ownYear!.ghiKWhPerM2).toBeGreaterThan(1300);
  expect(ownYear!.ghiKWhPerM2).toBeLessThan(1500);
});
