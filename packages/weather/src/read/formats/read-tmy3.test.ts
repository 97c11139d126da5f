import { expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { readWeather } from '../read-weather.js';
import { tmy3Lines } from '../weather-files.fixture.js';

const made = clearYear();
const lines = tmy3Lines(made);
const read = (text: string) => readWeather(text, { source: 'pond.csv' });

test('columns are found by name and -9900 is missing', () => {
  const weather = read(lines.join('\n'));
  expect(weather.kind).toBe('tmy3');
  expect(weather.place).toEqual({
    name: 'KETTLE POND',
    latitudeDeg: 46.9,
    longitudeDeg: -92.2,
    utcOffsetH: -6,
    elevationM: 430,
  });
  expect(weather.ghiWm2[12]).toBe(Math.round(made.ghiWm2[12]!));
  expect(weather.airC).toEqual(made.airC);
  expect(weather.pressurePa![0]).toBe(96000);
  expect(weather.albedo).toBeNull();
  expect([weather.precipitationMm![0], weather.precipitationMm![1]]).toEqual([0, 0.1]);
  expect(weather.snowDepthM).toBeNull();
  expect(weather.notices.map(({ code }) => code)).toContain('typical-year');
});

test('errors name the line', () => {
  const change = (line: number, from: RegExp, to: string): (() => unknown) => {
    const changed = lines.with(line - 1, lines[line - 1]!.replace(from, to));
    return () => read(changed.join('\n'));
  };
  expect(change(2, /GHI \(W\/m\^2\)/, 'sunshine')).toThrow('pond.csv line 2: no column "GHI (W/m^2)"');
  expect(change(50, /^../, '13')).toThrow('pond.csv line 50: month 13');
  expect(change(50, /^[^,]*/, 'today')).toThrow('pond.csv line 50: date is "today", expected MM/DD/YYYY');
  expect(change(50, /,\d\d:00/, ',7:30')).toThrow('line 50: time is "7:30"');
  expect(change(50, /,[^,]*$/, ',wet')).toThrow('line 50: precipitation is "wet", expected a number');
  expect(change(1, /-92.200/, '-192')).toThrow('line 1: longitude is "-192", expected a number from -180 to 180');
});
