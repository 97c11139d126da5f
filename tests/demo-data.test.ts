import { readFileSync } from 'node:fs';
import { examineWeather, readWeather } from '@wintergap/weather';
import { expect, test } from 'vitest';
// @ts-expect-error a plain script without types
import { kettlePondTable, means } from '../data-demo/make-kettle-pond.mjs';

const table = readFileSync(new URL('../data-demo/kettle-pond.csv', import.meta.url), 'utf8');

test('making the demo weather again gives the same bytes', () => {
  // Not toBe, which would print both tables.
  expect(kettlePondTable() === table).toBe(true);
});

test('the demo weather says in its first lines that it is invented', () => {
  expect(table.split('\n').slice(0, 2).join(' ')).toMatch(/INVENTED.*INVENTED/);
});

test('the demo weather is read, is believable, and has the monthly means of its script', () => {
  const weather = readWeather(table, { source: 'kettle-pond.csv' });
  const report = examineWeather(weather);
  expect(report.verdict).toBe('good');
  expect(report.notices).toEqual([]);
  const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  report.months.forEach((month, m) => {
    expect(Math.abs(month.ghiKWhM2 / days[m]! / means.sun.kWhPerM2Day[m] - 1)).toBeLessThan(0.001);
    expect(Math.abs(month.meanAirC - means.airC[m])).toBeLessThan(0.01);
  });
  expect(weather.place).toMatchObject({ latitudeDeg: 46.9, longitudeDeg: -92.2, elevationM: 430, utcOffsetH: -6 });
  expect(Math.max(...weather.snowDepthM!)).toBeGreaterThan(0.2);
});
