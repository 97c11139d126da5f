import { parseSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { manyYears } from './many-years.js';
import { outlookOf } from './outlook.js';
import { createYearRunner } from './years.js';

const site = parseSite(
  `
name: Stony Ridge cabin
place: { latitude: 45.3, longitude: -84.6, utcOffset: -5 h }
weather: { seed: 5, months: { irradiation: [1.5 kWh/m2, 2.5 kWh/m2, 3.8 kWh/m2, 4.9 kWh/m2, 5.7 kWh/m2, 6.2 kWh/m2,
                                            6.1 kWh/m2, 5.2 kWh/m2, 3.9 kWh/m2, 2.5 kWh/m2, 1.5 kWh/m2, 1.2 kWh/m2],
                              air: [-8 degC, -7 degC, -2 degC, 6 degC, 13 degC, 18 degC,
                                    21 degC, 20 degC, 15 degC, 8 degC, 2 degC, -5 degC] } }
arrays:
  - name: roof
    module: { power: 400 W, vmp: 31 V, imp: 12.9 A, voc: 37.2 V, isc: 13.7 A, cells: 54 }
    inSeries: 3
    strings: 1
    mount: { kind: fixed, tilt: 60, azimuth: south }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 60 A }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: 300 Ah, floor: 50 % }
loads: [{ name: radio, power: 20 W, bus: dc }]
`,
  'ridge.yaml',
).base;
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
