import { expect, test } from 'vitest';
import { sunOf } from '../sun-of-place.js';
import type { WeatherYear } from '../weather-year.js';
import { clearYear, pond } from './clear-year.fixture.js';
import { judgeWeather } from './judge-weather.js';

const good = clearYear();
const noticesOf = (weather: WeatherYear) => judgeWeather(weather).notices;
const times = (values: Float64Array, factor: number) => values.map((value) => value * factor);
const withSun = (factor: number): WeatherYear => ({
  ...good,
  ghiWm2: times(good.ghiWm2, factor),
  dniWm2: times(good.dniWm2, factor),
  dhiWm2: times(good.dhiWm2, factor),
});

test('a verdict has one line, file first, and what was found', () => {
  expect(judgeWeather(good)).toMatchObject({ verdict: 'good', line: 'clear year: good, it can be trusted' });
  const swapped = judgeWeather({ ...good, dniWm2: good.dhiWm2, dhiWm2: good.dniWm2 });
  expect(swapped.verdict).toBe('rejected');
  expect(swapped.line).toBe('clear year: rejected (closure, impossible irradiance)');
  const bare = judgeWeather({ ...good, snowDepthM: new Float64Array(8760) });
  expect(bare).toMatchObject({ verdict: 'usable', line: 'clear year: usable with care (no snow in frost)' });
});

// Each is a year that differs from the good one in its unit alone.
test.each([
  [0, 'no-sun', /no sun in the whole year/],
  [0.001, 'unlikely-sun', /kW\/m2 or kWh\/m2 taken for W\/m2/],
  [0.0036, 'unlikely-sun', /MJ\/m2 taken for W\/m2/],
  [3.6, 'unlikely-sun', /kJ\/m2 taken for W\/m2/],
])('a year with its sun times %d is rejected, and the likely unit named', (factor, code, text) => {
  const found = noticesOf(withSun(factor)).find((notice) => notice.code === code)!;
  expect(found.level).toBe('error');
  expect(found.text).toMatch(text);
});

test('air divided by a thousand, and air in degF, are rejected', () => {
  const found = (airC: Float64Array) => noticesOf({ ...good, airC }).find(({ code }) => code === 'unlikely-air');
  expect(found(times(good.airC, 0.001))).toMatchObject({ level: 'error' });
  expect(found(good.airC.map((air) => air * 1.8 + 32))?.text).toMatch(/degF taken for degC/);
  expect(found(good.airC)).toBeUndefined();
});

// ISO 2533: 94 kPa belongs to 629 m.
test('pressure that does not fit the elevation tells a wrong place; a placeholder or sea-level pressure does not', () => {
  const found = (elevationM: number, pa: (h: number) => number) =>
    noticesOf({
      ...good,
      place: { ...pond, elevationM },
      pressurePa: Float64Array.from({ length: 8760 }, (_, h) => pa(h)),
    }).find(({ code }) => code === 'pressure-elevation');
  const about = (pa: number) => (h: number) => pa + 500 * Math.sin(h / 40);
  expect(found(6, about(94_000))).toMatchObject({ level: 'error' });
  expect(found(6, about(94_000))!.text).toMatch(/it would fit 6[23]0 m/);
  expect(found(630, about(94_000))).toBeUndefined();
  expect(found(300, about(94_000))).toMatchObject({ level: 'warning' });
  expect(found(900, about(101_300))).toMatchObject({ level: 'note' });
  expect(found(900, () => 101_325)).toBeUndefined();
});

test("the sun of a site that is the same place serves as well as the file's own", () => {
  const sun = sunOf({ ...pond, latitudeDeg: pond.latitudeDeg + 0.01 });
  expect(judgeWeather(good, { sun }).verdict).toBe('good');
  // One of another zone is not taken, else the clock would seem two hours off.
  expect(judgeWeather(good, { sun: sunOf({ ...pond, utcOffsetH: -8 }) }).verdict).toBe('good');
});

test('snow that is given from elsewhere is no lack of the file', () => {
  const bare = { ...good, snowDepthM: new Float64Array(8760) };
  expect(judgeWeather(bare, { snowIsGiven: true }).verdict).toBe('good');
});
