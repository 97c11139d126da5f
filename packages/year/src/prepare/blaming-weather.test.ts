import { SiteError } from '@wintergap/site';
import { WeatherError } from '@wintergap/weather';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { blamingWeather } from './blaming-weather.js';

const ofArray = new SiteError('site.yaml', [{ line: 3, column: 1, path: 'arrays.0', message: 'no such array' }]);
const failing = (error: Error) => () => {
  throw error;
};
/** Hour -> watts per m2, darkness otherwise. */
const light = (hours: Record<number, number>) => always(0).map((_, h) => hours[h] ?? 0);

test('an array that can be worked out is handed on', () => {
  expect(blamingWeather(weatherOf({ ghiWm2: light({ 5: 9000 }) }), () => 7)).toBe(7);
});

// 1412 W/m2 is the sun above the air in early January.
test.each(['ghiWm2', 'dniWm2', 'dhiWm2'] as const)(
  '%s brighter than the sun above the air is to blame, with its line',
  (column) => {
    const lineOfHour = new Int32Array(8760).fill(40);
    const weather = weatherOf({ [column]: light({ 12: 1412, 36: 1413.04, 60: 5000 }), lineOfHour });
    expect(() => blamingWeather(weather, failing(ofArray))).toThrow(WeatherError);
    expect(() => blamingWeather(weather, failing(ofArray))).toThrow(/ line 40: .*hour from 01-02 12:00 are .*1413/);
  },
);

test('a year that has no lines is told by its first', () => {
  const ghiWm2 = light({ 36: 2000 });
  expect(() => blamingWeather(weatherOf({ ghiWm2 }), failing(ofArray))).toThrow(/ line 1: .*are 2000, 0, 0 W\/m2/);
  const lineOfHour = new Int32Array(8760);
  expect(() => blamingWeather(weatherOf({ ghiWm2, lineOfHour }), failing(ofArray))).toThrow(/ line 1: /);
});

// 350 W/m2 of global light from 101 of beam and 50 of diffuse: more than a beam from straight above gives.
test('global light that beam and diffuse do not make up is to blame, from 100 W/m2 on', () => {
  const parts = (ghi: number, dni: number) =>
    weatherOf({ ghiWm2: light({ 8759: ghi }), dniWm2: light({ 8759: dni }), dhiWm2: light({ 8759: 50 }) });
  const thrown = (ghi: number, dni: number) => () => blamingWeather(parts(ghi, dni), failing(ofArray));
  expect(thrown(252, 101)).toThrow(WeatherError);
  expect(thrown(251, 101)).toThrow(SiteError);
  expect(thrown(350, 100)).toThrow(SiteError);
});

test('under a possible sky the array is to blame, and faults of the program stay what they are', () => {
  expect(() => blamingWeather(weatherOf(), failing(ofArray))).toThrow(ofArray);
  const fault = new TypeError('a fault');
  expect(() => blamingWeather(weatherOf({ ghiWm2: light({ 5: 9000 }) }), failing(fault))).toThrow(fault);
});
