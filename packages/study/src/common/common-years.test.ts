import { join } from 'node:path';
import { loadSite, type Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { siteWeather } from '@wintergap/year';
import { expect, test } from 'vitest';
import { createWeatherYears, outlookWeather } from '../outlook/years.js';
import { commonWeather, commonYears, commonYearsFrom } from './common-years.js';

const file = join(import.meta.dirname, '../../../../examples/kettle-pond.yaml');
const site = loadSite(file).base;

test('a year is one object however often it is asked for, so that what is prepared from it are found again', () => {
  const years = commonYears(site, { years: 3, seed: 4 });
  expect(years).toMatchObject({ count: 3, kind: 'resampled' });
  const second = years.weatherOf(1);
  years.weatherOf(0);
  expect(years.weatherOf(1)).toBe(second);
});

test('the years are those that an outlook of the site begins with', () => {
  const { weatherOf } = createWeatherYears(site, outlookWeather(site, { years: 100, seed: 4 }));
  expect(commonYears(site, { years: 3, seed: 4 }).weatherOf(2)).toEqual(weatherOf(2));
});

test('one year is that of the file, as it is', () => {
  const { count, kind, weatherOf } = commonYears(site, { years: 1 });
  expect([count, kind]).toEqual([1, 'real']);
  expect(weatherOf(0)).toEqual(siteWeather(site));
  expect(() => weatherOf(1)).toThrow('the common years are numbered 0 to 0, got 1');
});

test('left out, there are twenty-five', () => {
  expect(commonYears(site).count).toBe(25);
});

/** A site of two files that were read already. */
const real = [{ source: 'a' }, { source: 'b' }] as WeatherYear[];
const read = { own: () => real[0]!, all: () => real };
const twoFiles = { ...site, weather: { file: 'a.csv', otherYears: ['b.csv'] } } as unknown as Site;

test('a site of several real years is compared over these, one year is its own', () => {
  const both = commonYearsFrom(twoFiles, read);
  expect([both.count, both.kind, both.spread]).toEqual([2, 'real', null]);
  expect([both.weatherOf(0), both.weatherOf(1)]).toEqual(real);
  const one = commonYearsFrom(twoFiles, read, { years: 1 });
  expect([one.count, one.kind, one.weatherOf(0)]).toEqual([1, 'real', real[0]]);
  const months = { ...site, weather: { months: {} } } as unknown as Site;
  expect(commonYearsFrom(months, read, { years: 1 }).kind).toBe('made');
});

test('how many years there are is known before one is made', () => {
  expect(commonWeather(twoFiles)).toEqual({ kind: 'real', years: 2 });
  expect(commonWeather(twoFiles, { years: 7 })).toMatchObject({ kind: 'resampled', years: 7 });
  expect(commonWeather(site)).toMatchObject({ kind: 'resampled', years: 25 });
  expect(commonWeather(site, { years: 7, seed: 3 })).toMatchObject({ years: 7, seed: 3 });
  const oneFile = { ...site, weather: { file: 'a.csv', otherYears: [] } } as unknown as Site;
  expect(commonWeather(oneFile)).toMatchObject({ kind: 'resampled', years: 25 });
});

test('years are numbered from 0 in whole numbers', () => {
  const { weatherOf } = commonYearsFrom(twoFiles, read);
  for (const wrong of [-1, 2, 0.5]) expect(() => weatherOf(wrong)).toThrow(`numbered 0 to 1, got ${wrong}`);
});

test('the first forty years are kept, of the later ones the latest', () => {
  const { weatherOf } = commonYears(site, { years: 50, seed: 4 });
  const [first, fortieth, later] = [weatherOf(0), weatherOf(39), weatherOf(40)];
  expect(weatherOf(40)).toBe(later);
  expect(weatherOf(41)).not.toBe(later);
  expect(weatherOf(40)).not.toBe(later);
  expect(weatherOf(40)).toEqual(later);
  expect([weatherOf(0), weatherOf(39)]).toEqual([first, fortieth]);
  expect(weatherOf(0)).toBe(first);
  expect(weatherOf(39)).toBe(fortieth);
});
