import { join } from 'node:path';
import { type Costs, readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { yearFigures } from '../year-figures.js';
import { figureColumns, resultColumns, sweepResults } from './row.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const year = simulateSite(site.base);
const hourly = (value: number) => new Float64Array(8760).fill(value);

test('a row says what is built, what the sun offered and what of it was used', () => {
  const ledger = { ...year.ledger, arrayAvailableWh: hourly(200), arrayUsedWh: hourly(150) };
  const results = sweepResults({ ...year, ledger });
  // Six modules of 32.5 V x 9.24 A; 1000 Ah at 24 V; 8760 h of 200 and of 150 Wh.
  expect(results.ratedKW).toBeCloseTo(1.8018, 9);
  expect(results.bankKWh).toBe(24);
  expect(results.availableKWh).toBeCloseTo(1752, 6);
  expect(results.usedKWh).toBeCloseTo(1314, 6);
  expect(Object.keys(results)).toEqual([...resultColumns]);
});

test('a row has the figures by which other studies judge the year', () => {
  const figures = yearFigures(year);
  const results = sweepResults(year);
  for (const name of ['generatorHours', 'starts', 'fuelLitres', 'darkKWh', 'darkHours', 'throttledKWh'] as const) {
    expect(results[name], name).toBe(figures[name]);
  }
  expect([results.minStateOfCharge, results.autonomyDays]).toEqual([figures.lowestStateOfCharge, figures.autonomyDays]);
});

test('a cost is there where there are prices, and has no end where one is missing', () => {
  const costs = readCosts(site) as Costs;
  // A bank of 24 kWh at 180 and 1.8 kW of array at 700 are 5581 at first; nothing beside them costs ten times as much.
  expect(sweepResults(year, costs).cost).toBeGreaterThan(5581 * 0.4);
  expect(sweepResults(year, costs).cost).toBeLessThan(55_810);
  expect(sweepResults(year, { ...costs, arrayPerKW: null }).cost).toBe(Infinity);
});

test('cost and means over years have columns behind the figures', () => {
  const years = { count: 4, seed: 2 };
  expect(figureColumns({ cost: false, years: null })).toEqual(resultColumns);
  expect(figureColumns({ cost: true, years: null })).toEqual([...resultColumns, 'cost']);
  expect(figureColumns({ cost: true, years }).slice(resultColumns.length)).toEqual([
    'cost',
    'generatorHoursMean',
    'generatorHoursError',
    'fuelLitresMean',
    'fuelLitresError',
    'darkKWhMean',
    'darkKWhError',
  ]);
});
