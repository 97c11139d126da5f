import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { outlookWeather } from '@wintergap/study';
import { judgeWeather, readWeatherFile, readWeatherYearsFile } from '@wintergap/weather';
import { simulateSite, siteWeatherYears } from '@wintergap/year';
import { afterAll, expect, test } from 'vitest';
import { realWeather } from './shared-folder.js';

const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-own-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const table = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8').trimEnd().split('\n');
const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
const head = table.filter((line) => !/^\d/.test(line) && !line.startsWith('# kind'));

/** The demo's rows as those of another calendar year, its irradiance times a factor. */
const rowsOf = (year: number, bright: number): string[] =>
  table
    .filter((line) => /^\d/.test(line))
    .map((line) => {
      const [time, ghi, dni, dhi, ...rest] = line.split(',');
      const times = [ghi, dni, dhi].map((value) => (Number(value) * bright).toFixed(1));
      return [time!.replace('2023', String(year)), ...times, ...rest].join();
    });

mkdirSync(join(folder, 'ridge'));
writeFileSync(join(folder, 'ridge/ridge-2019.csv'), [...head, ...rowsOf(2019, 1)].join('\n'));
writeFileSync(join(folder, 'ridge/ridge-2020.csv'), [...head, ...rowsOf(2020, 0.8)].join('\n'));
writeFileSync(join(folder, 'both.csv'), [...head, ...rowsOf(2019, 1), ...rowsOf(2020, 0.8)].join('\n'));

function siteOn(weather: string) {
  const file = join(folder, 'site.yaml');
  writeFileSync(file, example.replace(/^weather: .*$/m, `weather: ${weather}`));
  return loadSite(file).base;
}

test('real years come from a pattern, a folder, a list or one file, and are the same years', () => {
  const ways = ['"ridge/ridge-*.csv"', 'ridge', '[ridge/ridge-2019.csv, ridge/ridge-2020.csv]', 'both.csv'];
  const sums = ways.map((years) => {
    const site = siteOn(`{ years: ${years} }`);
    expect(outlookWeather(site)).toMatchObject({ kind: 'real', years: 2 });
    return siteWeatherYears(site).map(({ ghiWm2 }) => ghiWm2.reduce((sum, wm2) => sum + wm2, 0));
  });
  expect(sums[0]![1]! / sums[0]![0]!).toBeCloseTo(0.8, 3);
  for (const other of sums) expect(other).toEqual(sums[0]);
  expect(siteWeatherYears(siteOn('{ years: both.csv, leaveOut: [2019] }')).map(({ source }) => source)).toEqual([
    'both.csv 2020',
  ]);
});

test('a year says what its snow comes from, and how many of its hours were mended', () => {
  const { weather } = simulateSite(siteOn('ridge/ridge-2019.csv')).summary;
  expect(weather).toMatchObject({ verdict: 'good', snowFrom: 'depth', mendedHours: 0 });
});

const lyngby = realWeather('lyngby-2017.csv');
const place = { latitudeDeg: 55.79064, longitudeDeg: 12.52505, utcOffsetH: 1, elevationM: 50 };

test.skipIf(lyngby === null)(
  'a measured year with 400 missing hours is mended, told, and close to its measured sum',
  () => {
    expect(() => readWeatherFile(lyngby!, { place })).toThrow(
      /400 hours of air are missing in all: 22 December 01:00 \(240 h\)/,
    );
    const weather = readWeatherFile(lyngby!, { place, mend: true });
    expect(judgeWeather(weather).notices.find(({ code }) => code === 'mended-hours')).toMatchObject({ rows: 400 });
    // 903 kWh/m2 were measured (the folder's README) with 160 hours missing, 75 of them by day in April and July.
    const sum = weather.ghiWm2.reduce((total, wm2) => total + wm2, 0) / 1000;
    expect(sum).toBeGreaterThan(903);
    expect(sum).toBeLessThan(940);
  },
);

// Hours of a full measured year, thrown away and made again from its 366 days.
const whole = realWeather('lyngby-2016.csv');
test.skipIf(whole === null)('days of a measured year, its hours thrown away, keep its sun by month', () => {
  const hourly = readWeatherFile(whole!, { place, mend: true });
  const lines = [
    '-BEGIN HEADER-',
    'Dates (month/day/year): 01/01/2016 through 12/31/2016 in LST',
    'Location: latitude 55.79064 longitude 12.52505',
    'ALLSKY_SFC_SW_DWN irradiation (kW-hr/m^2/day)',
    'T2M air (C)',
    '-END HEADER-',
    'YEAR,DOY,ALLSKY_SFC_SW_DWN,T2M',
  ];
  const ofDay = (values: Float64Array, day: number) =>
    values.subarray(day * 24, day * 24 + 24).reduce((sum, value) => sum + value, 0);
  for (let day = 0; day < 365; day++) {
    lines.push(`2015,${day + 1},${ofDay(hourly.ghiWm2, day) / 1000},${ofDay(hourly.airC, day) / 24}`);
  }
  const file = join(folder, 'days.csv');
  writeFileSync(file, lines.join('\n'));
  const [year] = readWeatherYearsFile(file, { place: { utcOffsetH: 1 } });
  const made = year!.weather!;
  for (let day = 0; day < 365; day++) {
    expect(Math.abs(ofDay(made.ghiWm2, day) - ofDay(hourly.ghiWm2, day))).toBeLessThan(1e-6);
  }
  // Beam is split from made hours: its year comes out within a tenth of what was measured.
  const sums = [made, hourly].map(({ dniWm2 }) => dniWm2.reduce((sum, wm2) => sum + wm2, 0));
  expect(sums[0]! / sums[1]!).toBeGreaterThan(0.9);
  expect(sums[0]! / sums[1]!).toBeLessThan(1.1);
});
