import * as irradiance from '@wintergap/irradiance';
import { afterAll, expect, test, vi } from 'vitest';
import { clearYear } from '../check/clear-year.fixture.js';
import { examineWeather } from '../check/examine-weather.js';
import { sunOf } from '../sun-of-place.js';
import { readWeather } from './read-weather.js';
import { epwLines, isoStart, tableLines } from './weather-files.fixture.js';

// The latest sun is kept: before this test it is that of another place, whatever ran before.
sunOf({ latitudeDeg: 0, longitudeDeg: 0, utcOffsetH: 0 });
const sunYear = vi.spyOn(irradiance, 'sunYear');
afterAll(() => sunYear.mockRestore());

const made = clearYear();
const text = epwLines(made).join('\n');

test('a file with global, beam and diffuse is read without working out a sun; all else shares one', () => {
  const weather = readWeather(text, { source: 'pond.epw' });
  expect(weather.splitFrom).toBe('file');
  expect(sunYear).not.toHaveBeenCalled();

  const globalOnly = tableLines('time,ghi [W/m2],air [degC],wind [m/s]', (h) =>
    [isoStart(h), made.ghiWm2[h], made.airC[h], made.windMs[h]].join(),
  ).join('\n');
  const split = readWeather(globalOnly, { source: 'pond.csv' });
  expect(split.splitFrom).toBe('erbs');
  examineWeather(split);
  examineWeather(weather);
  expect(sunYear).toHaveBeenCalledTimes(1);
});
