import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { siteWeather } from '@wintergap/year';
import { expect, test } from 'vitest';
import { createWeatherYears, outlookWeather } from '../outlook/years.js';
import { commonYears } from './common-years.js';

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
