import { expect, test } from 'vitest';
import { clearYear, pond } from '../check/clear-year.fixture.js';
import { readWeather } from './read-weather.js';
import { isoStart, tableLines } from './weather-files.fixture.js';

const made = clearYear();
type Column = 'ghi' | 'dni' | 'dhi' | 'air' | 'wind';
const values: Record<Column, Float64Array> = {
  ghi: made.ghiWm2,
  dni: made.dniWm2,
  dhi: made.dhiWm2,
  air: made.airC,
  wind: made.windMs,
};
const unit: Record<Column, string> = { ghi: 'W/m2', dni: 'W/m2', dhi: 'W/m2', air: 'degC', wind: 'm/s' };

/** A table of some columns with fields left blank where `blank` says so. */
const table = (columns: readonly Column[], blank: (column: Column, h: number) => boolean = () => false): string =>
  tableLines(`time,${columns.map((column) => `${column} [${unit[column]}]`).join()}`, (h) =>
    [isoStart(h), ...columns.map((column) => (blank(column, h) ? '' : values[column][h]))].join(),
  ).join('\n');
const read = (text: string) => readWeather(text, { source: 'pond.csv' });

/** Largest difference over the hours with the sun well up, where the clear year has over 180 W/m2. */
const worst = (found: Float64Array, expected: Float64Array): number => {
  let largest = 0;
  for (let h = 0; h < 8760; h++) {
    if (made.ghiWm2[h]! > 180) largest = Math.max(largest, Math.abs(found[h]! - expected[h]!));
  }
  return largest;
};

test('beam left out is worked out from global and diffuse', () => {
  const weather = read(table(['ghi', 'dhi', 'air', 'wind']));
  expect(worst(weather.dniWm2, made.dniWm2)).toBeLessThan(8);
  expect(weather.splitFrom).toBe('file');
  expect(weather.notices.map(({ code }) => code)).toEqual(['third-from-two']);
});

test('diffuse or global left out is worked out from the other two', () => {
  expect(worst(read(table(['ghi', 'dni', 'air', 'wind'])).dhiWm2, made.dhiWm2)).toBeLessThan(3);
  expect(worst(read(table(['dni', 'dhi', 'air', 'wind'])).ghiWm2, made.ghiWm2)).toBeLessThan(3);
});

test('global alone is split, and its parts add up to it again', () => {
  const weather = read(table(['ghi', 'air', 'wind']));
  expect(weather.splitFrom).toBe('erbs');
  expect(weather.ghiWm2).toEqual(made.ghiWm2);
  expect(weather.notices[0]).toMatchObject({ code: 'split-by-erbs', level: 'note' });
  for (let h = 0; h < 8760; h++) {
    expect(weather.dhiWm2[h]).toBeGreaterThanOrEqual(0);
    expect(weather.dhiWm2[h]).toBeLessThanOrEqual(weather.ghiWm2[h]! + 1e-9);
  }
});

test('splitting needs to know where the sun is', () => {
  const nowhere = table(['ghi', 'air', 'wind']).replace(/^#.*\n/gm, '');
  expect(() => read(nowhere)).toThrow('latitude, longitude and UTC offset of the place are needed');
  expect(readWeather(nowhere, { source: 'pond.csv', place: pond }).splitFrom).toBe('erbs');
});

test('six missing hours of temperature are bridged by a straight line, seven are refused', () => {
  const six = read(table(['ghi', 'dni', 'dhi', 'air', 'wind'], (column, h) => column === 'air' && h >= 100 && h < 106));
  const step = (made.airC[106]! - made.airC[99]!) / 7;
  for (let i = 1; i <= 6; i++) expect(six.airC[99 + i]).toBeCloseTo(made.airC[99]! + i * step, 10);
  expect(six.notices[0]).toMatchObject({ code: 'gaps-filled', rows: 6 });
  const seven = table(['ghi', 'dni', 'dhi', 'air', 'wind'], (column, h) => column === 'air' && h >= 100 && h < 107);
  expect(() => read(seven)).toThrow('pond.csv line 106: air is missing for 7 hours from 01-05 04:00');
});

test('the command that a long gap advises names the file where it was found', () => {
  const seven = table(['ghi', 'dni', 'dhi', 'air', 'wind'], (column, h) => column === 'air' && h >= 100 && h < 107);
  const found = (path?: string) => () => readWeather(seven, { source: 'pond.csv', path });
  expect(found('data/my pond.csv')).toThrow('wintergap weather "data/my pond.csv" --mend --table mended.csv');
  expect(found()).toThrow('wintergap weather pond.csv --mend --table mended.csv');
});

test('a gap that runs over New Year is one gap', () => {
  const weather = read(
    table(['ghi', 'dni', 'dhi', 'air', 'wind'], (column, h) => column === 'wind' && (h < 3 || h >= 8757)),
  );
  expect(weather.windMs.every((wind) => wind >= 0)).toBe(true);
  expect(weather.notices[0]).toMatchObject({ code: 'gaps-filled', rows: 6 });
});

test('dark hours without irradiance are dark; a day without is refused', () => {
  const sun = (column: Column): boolean => column === 'ghi' || column === 'dni' || column === 'dhi';
  const columns = ['ghi', 'dni', 'dhi', 'air', 'wind'] as const;
  const nights = read(table(columns, (column, h) => sun(column) && made.ghiWm2[h] === 0));
  expect(nights.ghiWm2).toEqual(made.ghiWm2);
  const day = table(columns, (column, h) => sun(column) && h >= 4800 && h < 4824);
  expect(() => read(day)).toThrow(/pond.csv line 48\d\d: ghi is missing for 1\d hours from 07-20/);
});

test('small negative readings of a night are zero, and said so', () => {
  values.ghi = made.ghiWm2.map((ghi) => (ghi === 0 ? -2.5 : ghi));
  const weather = read(table(['ghi', 'dni', 'dhi', 'air', 'wind']));
  values.ghi = made.ghiWm2;
  expect(weather.ghiWm2).toEqual(made.ghiWm2);
  expect(weather.notices[0]?.code).toBe('negative-irradiance');
});

test('files without temperature or irradiance are refused', () => {
  expect(() => read(table(['ghi', 'dni', 'dhi', 'wind']))).toThrow('no values of air');
  expect(() => read(table(['dni', 'air']))).toThrow('no global irradiance (ghi)');
});
