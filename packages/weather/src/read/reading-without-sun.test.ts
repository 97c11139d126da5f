import { sunYear } from '@wintergap/irradiance';
import { expect, test, vi } from 'vitest';
import { clearYear } from '../check/clear-year.fixture.js';
import { examineWeather } from '../check/examine-weather.js';
import { readWeather } from './read-weather.js';
import { epwLines, isoStart, tableLines } from './weather-files.fixture.js';

vi.mock('@wintergap/irradiance', async (original) => {
  const real = await original<typeof import('@wintergap/irradiance')>();
  return { ...real, sunYear: vi.fn(real.sunYear) };
});

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
