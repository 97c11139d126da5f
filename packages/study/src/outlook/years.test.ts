import type { Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { madeWeather, PreparedCache } from '@wintergap/year';
import { expect, test } from 'vitest';
import { ridgeCabin } from '../ridge-cabin.fixture.js';
import { figuresUnder } from '../year-figures.js';
import { createWeatherYears, createYearRunner, outlookWeather, weatherYearsFrom } from './years.js';

const oneFile = { weather: { file: 'a.csv' } } as unknown as Site;
const twoFiles = { weather: { file: 'a.csv', otherYears: ['b.csv'] } } as unknown as Site;
const months = { weather: { months: {} } } as unknown as Site;

test('a site of several years meets these, unless another number or a spread is asked for', () => {
  expect(outlookWeather(twoFiles)).toEqual({ kind: 'real', years: 2 });
  expect(outlookWeather(twoFiles, { seed: 3 })).toEqual({ kind: 'real', years: 2 });
  expect(outlookWeather(twoFiles, { years: 30 })).toEqual({
    kind: 'resampled',
    from: 2,
    years: 30,
    seed: 1,
    spread: 1,
  });
  expect(outlookWeather(twoFiles, { spread: 0 })).toEqual({
    kind: 'resampled',
    from: 2,
    years: 100,
    seed: 1,
    spread: 0,
  });
});

test('a site of one year has a hundred drawn from its days, one of monthly means a hundred made of them', () => {
  expect(outlookWeather(oneFile)).toEqual({ kind: 'resampled', from: 1, years: 100, seed: 1, spread: 1 });
  expect(outlookWeather(months, { years: 7, seed: 9, spread: 2 })).toEqual({
    kind: 'made',
    years: 7,
    seed: 9,
    spread: 2,
  });
  expect(outlookWeather(months)).toEqual({ kind: 'made', years: 100, seed: 1, spread: 1 });
});

test('real years come as they are, in their order, without a spread', () => {
  const years = [{ source: 'a.csv' }, { source: 'b.csv' }] as WeatherYear[];
  const { weatherOf, spread } = weatherYearsFrom(twoFiles, { kind: 'real', years: 2 }, () => years);
  expect([weatherOf(0), weatherOf(1), spread]).toEqual([years[0], years[1], null]);
});

const cabin = ridgeCabin('loads: [{ name: radio, power: 20 W, bus: dc }]');

test('years made of monthly means differ by seed and number, and no two of them are one year', () => {
  const made = (seed: number, spread = 1) =>
    weatherYearsFrom(cabin, { kind: 'made', years: 3, seed, spread }, () => []);
  const light = ({ ghiWm2 }: WeatherYear) => ghiWm2.reduce((sum, watts) => sum + watts, 0);
  const sums = [made(1).weatherOf(0), made(1).weatherOf(1), made(2).weatherOf(0), made(2).weatherOf(1)].map(light);
  expect(new Set(sums).size).toBe(4);
  expect(light(made(1).weatherOf(1))).toBe(sums[1]);
  expect(made(1).spread).not.toBeNull();
  // Without a spread every year has the light of its months.
  const even = made(1, 0);
  expect(even.spread).toBeNull();
  expect(light(even.weatherOf(0)) / light(even.weatherOf(1))).toBeCloseTo(1, 2);
  expect(Math.abs(sums[0]! / sums[1]! - 1)).toBeGreaterThan(1e-4);
});

test('a year that is run by its number is the one of that weather', () => {
  const weather = { kind: 'made', years: 3, seed: 1, spread: 1 } as const;
  const run = createYearRunner({ site: cabin, weather });
  const { weatherOf } = createWeatherYears(cabin, weather);
  expect(run(1)).toEqual(figuresUnder(cabin, weatherOf(1), new PreparedCache()));
});

test('years drawn from the days of a file differ from it and from each other', () => {
  const real = madeWeather(cabin, 7, 0);
  const { weatherOf, spread } = weatherYearsFrom(
    oneFile,
    { kind: 'resampled', from: 1, years: 2, seed: 1, spread: 0 },
    () => [real],
  );
  expect(spread).toBeNull();
  const hottest = ({ ghiWm2 }: WeatherYear) => ghiWm2.slice(4000, 4300).join();
  expect(new Set([real, weatherOf(0), weatherOf(1)].map(hottest)).size).toBe(3);
});
