import { join } from 'node:path';
import { hoursPerYear } from '@wintergap/ground';
import { loadSite } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { figuresOf, figuresUnder, yearFigures } from './year-figures.js';

const site = loadSite(join(import.meta.dirname, '../../../examples/kettle-pond.yaml')).base;
const prepared = new PreparedCache();
const year = simulateSite(site, prepared);
const hourly = (value: number) => new Float64Array(hoursPerYear).fill(value);

// Weeks begin at hours 0, 168, ... 51 x 168 = 8568; the last has 192 hours.
test('engine hours stand in their week from 1 January, those of the day that is left over in the last', () => {
  const generatorH = hourly(0);
  for (const hour of [0, 167, 168, 8568, 8759]) generatorH[hour] = 1;
  const { generatorWeekHours, generatorHours } = yearFigures({ ...year, ledger: { ...year.ledger, generatorH } });
  expect(generatorWeekHours).toHaveLength(52);
  expect(generatorWeekHours.map((hours, week) => [week, hours]).filter(([, hours]) => hours! > 0)).toEqual([
    [0, 2],
    [1, 1],
    [51, 2],
  ]);
  expect(generatorHours).toBe(5);
});

test('energies are told in kilowatt-hours, the bank by its lowest moment', () => {
  const lowestStateOfCharge = hourly(0.8);
  lowestStateOfCharge[4000] = 0.35;
  const ledger = { ...year.ledger, throttledWh: hourly(100), lowestStateOfCharge };
  const load = { ...year.load, acW: hourly(300), dcW: hourly(50) };
  const weather = { ...year.weather, ghiWm2: hourly(120) };
  const figures = yearFigures({ ...year, ledger, load, weather });
  expect(figures.throttledKWh).toBeCloseTo(876, 6);
  expect(figures.loadKWh).toBeCloseTo(3066, 6);
  expect(figures.ghiKWhPerM2).toBeCloseTo(1051.2, 6);
  expect(figures.lowestStateOfCharge).toBe(0.35);
});

test('a year has the same figures run in full, run bare, and run from what was read', () => {
  const inputs = { weather: year.weather, measured: null };
  const figures = yearFigures(year);
  expect(figures.generatorMonthHours.reduce((sum, hours) => sum + hours, 0)).toBeCloseTo(figures.generatorHours, 9);
  expect(figuresUnder(site, year.weather, prepared)).toEqual(figures);
  expect(figuresOf(site, inputs, prepared)).toEqual(figures);
});
