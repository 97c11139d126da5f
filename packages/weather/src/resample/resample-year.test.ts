import fc from 'fast-check';
import { linearRegression, mean, standardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { dailyIrradiation, longestDullRun } from '../make/clearness-statistics.js';
import { makeYear } from '../make/make-year.js';
import { monthMeans } from '../make/monthly-smooth.js';
import { sunOf } from '../sun-of-place.js';
import type { WeatherYear } from '../weather-year.js';
import { createResampler, resampleYear } from './resample-year.js';

const place = { latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6, elevationM: 430 };
const sourceYear = (seed: number, latitudeDeg = place.latitudeDeg): WeatherYear =>
  makeYear(
    {
      sun: { kind: 'clearness', clearness: [0.42, 0.48, 0.5, 0.48, 0.48, 0.51, 0.54, 0.52, 0.47, 0.41, 0.34, 0.36] },
      airC: [-12, -9, -3, 4, 11, 16, 19, 18, 13, 6, -2, -9],
      snow: { fallDays: [12, 9, 8, 4, 0, 0, 0, 0, 0, 2, 8, 12] },
    },
    { ...place, latitudeDeg },
    { seed },
  );
const source = sourceYear(1);
const other = sourceYear(2);
const columns = (year: WeatherYear) => [year.ghiWm2, year.dniWm2, year.dhiWm2, year.airC, year.windMs, year.snowDepthM];
const yearSum = (year: WeatherYear): number => year.ghiWm2.reduce((sum, wm2) => sum + wm2, 0);

test('with one year and no room to move, the year comes back as it was', () => {
  const same = resampleYear(source, { seed: 3, yearIndex: 0, windowDays: 0 });
  for (const [i, column] of columns(same).entries()) {
    for (let h = 0; h < 8760; h += 7) expect(column![h]).toBeCloseTo(columns(source)[i]![h]!, 9);
  }
});

test('a year depends on the seed and its number alone, not on the order of making', () => {
  const make = createResampler([source, other], { seed: 12 }).yearOf;
  const seventh = columns(make(7));
  make(3);
  expect(columns(make(7))).toEqual(seventh);
  expect(columns(resampleYear([source, other], { seed: 12, yearIndex: 7 }))).toEqual(seventh);
  expect(columns(make(8))).not.toEqual(seventh);
  expect(columns(resampleYear([source, other], { seed: 13, yearIndex: 7 }))).not.toEqual(seventh);
});

// November to January has a spread of 8 %: the mean of 60 years is known to 1 %.
test('many years together have the sunshine and the warmth of the year they come from', () => {
  const { yearOf } = createResampler([source], { seed: 5 });
  const years = Array.from({ length: 60 }, (_, n) => yearOf(n));
  expect(Math.abs(mean(years.map(yearSum)) / yearSum(source) - 1)).toBeLessThan(0.01);
  const dark = (year: WeatherYear): number => [10, 11, 0].reduce((sum, m) => sum + monthMeans(year.ghiWm2)[m]!, 0);
  expect(Math.abs(mean(years.map(dark)) / dark(source) - 1)).toBeLessThan(0.03);
  const air = (year: WeatherYear): number => mean([...year.airC]);
  expect(Math.abs(mean(years.map(air)) - air(source))).toBeLessThan(0.3);
  const dullest = years.map((year) => longestDullRun(dailyIrradiation(year.ghiWm2), 0.75).days);
  const inSource = longestDullRun(dailyIrradiation(source.ghiWm2), 0.75).days;
  expect(mean(dullest)).toBeGreaterThan(0.7 * inSource);
  expect(mean(dullest)).toBeLessThan(1.6 * inSource);
});

/** Relative standard deviations of monthly sums, of November to January, and of the year. */
function variations(years: readonly WeatherYear[]) {
  const of = (sums: number[]): number => standardDeviation(sums) / mean(sums);
  const months = years.map((year) => monthMeans(year.ghiWm2));
  return {
    months: Array.from({ length: 12 }, (_, m) => of(months.map((means) => means[m]!))),
    dark: of(months.map((means) => means[10]! + means[11]! + means[0]!)),
    year: of(years.map(yearSum)),
  };
}

// Twelve months of 100 years: each standard deviation is known to 7 %, their mean to 2 %.
test('months get the spread that is said, and the year about four per cent of it', () => {
  const { yearOf, spread } = createResampler([source], { seed: 6 });
  const { months, year } = variations(Array.from({ length: 100 }, (_, n) => yearOf(n)));
  expect(spread).toMatchObject({ odds: 0.28, from: 'lyngby', forUnknownMean: 1 });
  expect(Math.abs(mean(months) / mean([...spread!.months]) - 1)).toBeLessThan(0.06);
  for (let m = 0; m < 12; m++) expect(Math.abs(months[m]! / spread!.months[m]! - 1)).toBeLessThan(0.25);
  expect(year).toBeGreaterThan(0.03);
  expect(year).toBeLessThan(0.05);
});

test('years without a spread have that of their blocks alone, and a multiple gives more', () => {
  const dark = (spread: number): number => {
    const { yearOf } = createResampler([source], { seed: 6, spread });
    return variations(Array.from({ length: 60 }, (_, n) => yearOf(n))).dark;
  };
  const [none, usual, twice] = [dark(0), dark(1), dark(2)];
  expect(usual).toBeGreaterThan(1.2 * none);
  expect(twice).toBeGreaterThan(1.5 * usual);
  expect(createResampler([source], { seed: 6, spread: 0 }).spread).toBeNull();
});

// A dull month is one of dull days. Dimming the days of a month instead moved beam and global by the same share, where
// in months that differ by nature beam moves twice as much.
test('beam answers to a spread as it does to months that differ by themselves', () => {
  const dark = (column: Float64Array): number => [10, 11, 0].reduce((sum, m) => sum + monthMeans(column)[m]!, 0);
  const make = (spread: number) => {
    const { yearOf } = createResampler([source], { seed: 8, spread });
    return Array.from({ length: 60 }, (_, n) => yearOf(n));
  };
  const slope = (x: number[], y: number[]): number => linearRegression(x.map((value, i) => [value, y[i]!])).m;
  const [none, spread] = [make(0), make(1.5)];
  const relative = (values: number[]): number[] => values.map((value) => value / mean(values));
  const ghi = (years: WeatherYear[]) => relative(years.map((year) => dark(year.ghiWm2)));
  const dni = (years: WeatherYear[]) => relative(years.map((year) => dark(year.dniWm2)));
  const natural = slope(ghi(none), dni(none));
  const difference = (of: (years: WeatherYear[]) => number[]) => of(spread).map((value, n) => value - of(none)[n]!);
  const added = slope(difference(ghi), difference(dni));
  expect(natural).toBeGreaterThan(1.5);
  expect(Math.abs(added / natural - 1)).toBeLessThan(0.15);
});

test('of several years the spread is theirs', () => {
  const { spread } = createResampler([source, other], { seed: 6 });
  // Both are made from the same means, so they show none, and their blocks keep what they have.
  expect(spread).toMatchObject({ from: 'years', odds: expect.closeTo(0, 2) });
});

test('measured years allow for being no usual ones, typical years do not', () => {
  const measured: WeatherYear = { ...source, kind: 'table', notices: [] };
  expect(createResampler([measured], { seed: 1 }).spread!.forUnknownMean).toBeCloseTo(1.248, 3);
  const typical: WeatherYear = { ...measured, notices: [{ code: 'typical-year', level: 'note', text: '' }] };
  expect(createResampler([typical], { seed: 1 }).spread!.forUnknownMean).toBe(1);
});

test('global is diffuse plus beam on the horizontal in the moved days as in the source', () => {
  const year = resampleYear(source, { seed: 2, yearIndex: 1, spread: 2 });
  const { meanCosZenith } = sunOf(place);
  const gaps = year.ghiWm2.map((ghi, h) => Math.abs(ghi - year.dhiWm2[h]! - year.dniWm2[h]! * meanCosZenith[h]!));
  expect(Math.max(...gaps)).toBeLessThan(1e-6);
});

test('snow never rises where blocks meet, only where it fell in the source', () => {
  const year = resampleYear([source, other], { seed: 21, yearIndex: 4 });
  const rises = (snow: Float64Array): number => {
    let most = 0;
    for (let h = 1; h < 8760; h++) most = Math.max(most, snow[h]! - snow[h - 1]!);
    return most;
  };
  expect(rises(year.snowDepthM!)).toBeLessThanOrEqual(
    Math.max(rises(source.snowDepthM!), rises(other.snowDepthM!)) + 1e-12,
  );
  expect(Math.max(...year.snowDepthM!.subarray(160 * 24, 250 * 24))).toBe(0);
});

test('from 60 south to 70 north, with any blocks, no value is below zero or not a number', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -60, max: 70 }),
      fc.integer({ min: 1, max: 182 }),
      fc.integer({ min: 0, max: 182 }),
      fc.boolean(),
      (latitudeDeg, blockDays, windowDays, known) => {
        const made = sourceYear(3, latitudeDeg);
        const from = known ? made : { ...made, place: {} };
        const year = resampleYear(from, { seed: 1, yearIndex: 2, blockDays, windowDays });
        for (const column of [year.ghiWm2, year.dniWm2, year.dhiWm2, year.windMs, year.snowDepthM!]) {
          expect(column.every((value) => value >= 0 && value < 1500)).toBe(true);
        }
        expect(year.airC.every((value) => value > -70 && value < 70)).toBe(true);
      },
    ),
    { numRuns: 15 },
  );
});

test('impossible settings are refused', () => {
  expect(() => createResampler([], { seed: 1 })).toThrow('at least one weather year is needed');
  expect(() => resampleYear(source, { seed: 1, yearIndex: -1 })).toThrow('yearIndex must be a whole number from 0');
  expect(() => createResampler([source], { seed: 1, blockDays: 0 })).toThrow(
    'blockDays must be a whole number from 1 to 182, got 0',
  );
  expect(() => createResampler([source], { seed: 1, windowDays: 300 })).toThrow(RangeError);
  expect(() => createResampler([source], { seed: 1, spread: 4 })).toThrow('spread must be 0 to 3, got 4');
  const nowhere = { ...source, place: {} };
  expect(() => resampleYear(nowhere, { seed: 1, yearIndex: 0, spread: 1 })).toThrow('needs latitude');
});
