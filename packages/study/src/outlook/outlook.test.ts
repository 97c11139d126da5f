import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { outlookFrom } from './outlook.js';

const site = (stored?: number) =>
  ({ name: 'Otter Bend', generator: { fuel: { ...(stored !== undefined && { stored }) } } }) as Site;
const noEngine = { name: 'Otter Bend' } as Site;
const yearOf = (of: Partial<YearFigures>): YearFigures =>
  ({
    generatorHours: 0,
    fuelLitres: 0,
    darkHours: 0,
    darkKWh: 0,
    loadKWh: 1000,
    throttledKWh: 0,
    lowestStateOfCharge: 0.5,
    autonomyDays: 4,
    ...of,
  }) as YearFigures;
const outlook = (of: Site, years: YearFigures[]) =>
  outlookFrom({ site: of, weather: { kind: 'real', years: years.length } }, years);

// One year of four is dark, for 87.6 h: a 400th of 4 x 8760 h; 8 of 4000 kWh.
test('loss of load is told as a share of all hours, of the energy and of the years', () => {
  const years = [{ darkHours: 87.6, darkKWh: 8 }, {}, {}, {}].map(yearOf);
  const { lossOfLoad } = outlook(noEngine, years);
  expect(lossOfLoad.timeShare).toBeCloseTo(1 / 400, 12);
  expect(lossOfLoad.energyShare).toBeCloseTo(0.002, 12);
  expect(lossOfLoad.years.share).toBe(0.25);
});

test('a place without any load has none of its energy dark', () => {
  const { lossOfLoad, spread, ownYear } = outlook(noEngine, [yearOf({ loadKWh: 0 })]);
  expect([lossOfLoad.energyShare, spread, ownYear]).toEqual([0, null, null]);
});

test('the fuel store runs out in the years that burn more than it holds, not in one that just empties it', () => {
  const years = [80, 90, 100, 110].map((fuelLitres) => yearOf({ fuelLitres }));
  const { fuelStore } = outlook(site(100), years);
  expect([fuelStore!.storedLitres, fuelStore!.runsOut.share]).toEqual([100, 0.25]);
  expect(outlook(site(), years).fuelStore).toBeNull();
  expect(outlook(noEngine, years).fuelStore).toBeNull();
});

// 160 years: from the first 20, 40 and 80 too; 50: from 12 (half of 25), 25; 19: from all alone.
test('how the one-in-ten year settles is told from halves of the years, at most three and of no fewer than ten', () => {
  const counts = (of: number) =>
    outlook(site(), new Array(of).fill(yearOf({}))).settling.steps.map(({ years }) => years);
  expect(counts(160)).toEqual([20, 40, 80, 160]);
  expect(counts(1000)).toEqual([125, 250, 500, 1000]);
  expect(counts(50)).toEqual([12, 25, 50]);
  expect(counts(20)).toEqual([10, 20]);
  expect(counts(19)).toEqual([19]);
});

test('what settles is the engine, or without one the dark hours', () => {
  const years = Array.from({ length: 21 }, (_, i) => yearOf({ generatorHours: i, darkHours: 100 + i }));
  const engine = outlook(site(), years).settling;
  // Of 0 to 20 the median is 10 and nine tenths 18; of the first ten 4.5 and 8.1.
  expect(engine.figure).toBe('generatorHours');
  expect(engine.steps).toEqual([
    { years: 10, usual: 4.5, oneInTen: expect.closeTo(8.1, 9) },
    { years: 21, usual: 10, oneInTen: 18 },
  ]);
  expect(outlook(noEngine, years).settling).toMatchObject({ figure: 'darkHours' });
  expect([outlook(site(), years).hasGenerator, outlook(noEngine, years).hasGenerator]).toEqual([true, false]);
  expect(outlook(site(), years).ranked.generatorHours.worst).toBe(20);
});
