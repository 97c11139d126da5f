import type { Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { expect, test } from 'vitest';
import { outlookWeather, weatherYearsFrom } from './years.js';

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
