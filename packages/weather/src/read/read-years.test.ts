import { expect, test } from 'vitest';
import { clearYear } from '../check/clear-year.fixture.js';
import { readWeather, readWeatherYears } from './read-weather.js';
import { isoStart, tableLines } from './weather-files.fixture.js';

const good = clearYear();
const headings = 'time,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s]';
const row = (h: number, year: number, bright = 1): string =>
  `${isoStart(h).replace('2023', String(year))},${[good.ghiWm2, good.dniWm2, good.dhiWm2].map((values) => (bright * values[h]!).toFixed(1)).join()},${good.airC[h]},${good.windMs[h]}`;
const rowsOf = (year: number, bright = 1) => Array.from({ length: 8760 }, (_, h) => row(h, year, bright));
const leapRows = Array.from({ length: 24 }, (_, k) => `2020-02-29T${String(k).padStart(2, '0')}:00,0,0,0,1,1`);
const year2020 = rowsOf(2020, 0.5);
const head = tableLines(headings, () => '').slice(0, 5);
const text = [
  ...head,
  ...Array.from({ length: 24 }, (_, k) => row(8736 + k, 2018)),
  ...rowsOf(2019),
  ...year2020.slice(0, 59 * 24),
  ...leapRows,
  ...year2020.slice(59 * 24),
  ...rowsOf(2021).filter((_, h) => h < 3000 || h >= 3300),
].join('\n');

test('each calendar year of a file is read and judged by itself; leap days and beginnings are left out', () => {
  const years = readWeatherYears(text, { source: 'ridge.csv' });
  expect(years.map(({ calendarYear }) => calendarYear)).toEqual([2019, 2020, 2021]);
  const [y2019, y2020, y2021] = years;
  expect(y2019!.weather!.source).toBe('ridge.csv 2019');
  expect([...y2019!.weather!.ghiWm2]).toEqual([
    ...readWeather([...head, ...rowsOf(2019)].join('\n'), { source: 'x' }).ghiWm2,
  ]);
  expect(y2020!.weather!.ghiWm2[12]).toBeCloseTo(y2019!.weather!.ghiWm2[12]! / 2, 0);
  expect(y2020!.weather!.notices.map(({ code }) => code)).toContain('leap-day-dropped');
  expect(y2021!.weather).toBeNull();
});

test('several years read as one say what to write', () => {
  expect(() => readWeather(text, { source: 'ridge.csv' })).toThrow(
    /the rows are of several years \(2018 and 2019\): in the site file write weather: { years: ridge.csv }/,
  );
});
