import { compareText, weatherText, yearText } from '@wintergap/report';
import { examineWeather, type WeatherYear } from '@wintergap/weather';
import { simulateWeather, siteWeather, type YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { answerAround } from '../packages/report/src/common-answer.fixture.js';
import { honeyHouse } from './honey-house.js';

const halfYearH = 182 * 24;

/** The northern weather half a year later, under the southern sun. */
function mirrored(weather: WeatherYear): WeatherYear {
  const later = <Column extends Float64Array | null>(column: Column): Column =>
    (column && Float64Array.from(column, (_, h) => column[(h + halfYearH) % column.length]!)) as Column;
  return {
    ...weather,
    place: { ...weather.place, ...(weather.place.latitudeDeg && { latitudeDeg: -weather.place.latitudeDeg }) },
    ghiWm2: later(weather.ghiWm2),
    dniWm2: later(weather.dniWm2),
    dhiWm2: later(weather.dhiWm2),
    airC: later(weather.airC),
    windMs: later(weather.windMs),
    snowDepthM: later(weather.snowDepthM),
    precipitationMm: later(weather.precipitationMm),
    albedo: later(weather.albedo),
    relativeHumidity: later(weather.relativeHumidity),
    pressurePa: later(weather.pressurePa),
    notices: [],
  };
}

// Loads follow outdoor temperature only, and the plane is fixed: nothing in the design names a date.
const plain = (text: string) =>
  text
    .replace(/^variants:[\s\S]*/m, '')
    .replace(/^ {2}- \{ name: honey extractor.*\n.*\n/m, '')
    .replace(/^skyline:\n(?: {2}- .*\n| {4}.*\n)*/m, '')
    .replace(/mount: \{ kind: pole.*\}\n/, 'mount: { kind: fixed, tilt: 60, azimuth: 180 }\n');

const northSite = honeyHouse(plain);
const southSite = honeyHouse((text) =>
  plain(text).replace('latitude: 46.9', 'latitude: -46.9').replace('azimuth: 180', 'azimuth: 0'),
);
const northWeather = siteWeather(northSite.base);
const southWeather = mirrored(northWeather);
const north = simulateWeather(northSite.base, northWeather);
const south = simulateWeather(southSite.base, southWeather);

test('a place mirrored at the equator, half a year later, has the same dark season and the same figures', () => {
  expect(north.summary.darkSeason).toEqual({ month: 12, months: [11, 12, 1] });
  expect(south.summary.darkSeason).toEqual({ month: 6, months: [5, 6, 7] });
  // Months of 30 and 31 days and the distance of the sun, nearest in January, leave a percent or two.
  console.log(
    JSON.stringify(
      [north, south].map(({ summary: s }) => [
        s.bank.autonomyDays,
        s.array.availableKWh,
        s.load.servedKWh,
        s.generator.hours,
      ]),
    ),
  );
  const near = (figure: (year: YearResult) => number, share: number) =>
    expect(Math.abs(figure(south) / figure(north) - 1)).toBeLessThan(share);
  near(({ summary }) => summary.bank.autonomyDays, 0.02);
  near(({ summary }) => summary.array.availableKWh, 0.03);
  near(({ summary }) => summary.load.servedKWh, 0.005);
});

test('no page speaks of December where another month is the darkest', () => {
  const units = 'metric';
  const twice = ['base', 'again'].map((name) => ({ name, result: south }));
  const pages = [
    yearText(south, units)
      .split('\n\n')
      .filter((part) => part.startsWith('Bank'))
      .join(),
    compareText(twice, answerAround(twice), units)
      .split('\n\n')
      .find((part) => part.startsWith('In the year of the file'))!,
    weatherText(examineWeather(southWeather), units).split('\n\n')[0]!,
  ];
  for (const page of pages) {
    expect(page).toMatch(/June/);
    expect(page).not.toMatch(/December/);
  }
});
