import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { changedDesign, loadSite, type Site, SiteError } from '@wintergap/site';
import { RejectedWeatherError, WeatherError } from '@wintergap/weather';
import { afterAll, expect, test } from 'vitest';
import { madeSpread, madeWeather } from './made-weather.js';
import { measuredLoadOf } from './measured-load.js';
import { PreparedCache } from './prepared-cache.js';
import { siteWeather, siteWeatherYears } from './site-weather.js';

const root = new URL('../../../../', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'wintergap-site-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const table = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8').trimEnd().split('\n');
const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
const head = table.filter((line) => !/^\d/.test(line) && !line.startsWith('# kind'));
const rows = table.filter((line) => /^\d/.test(line));
const rowsOf = (year: number, change = (row: string[]) => row) =>
  rows.map((row) => change(row.replace('2023', String(year)).split(',')).join());

/** The air of every hour 2 K warmer, so that the file is told from others by its mean. */
const warmer = ([time, ghi, dni, dhi, air, ...rest]: string[]) => [
  time!,
  ghi!,
  dni!,
  dhi!,
  String(Number(air) + 2),
  ...rest,
];
const swapped = ([time, ghi, dni, dhi, ...rest]: string[]) => [time!, ghi!, dhi!, dni!, ...rest];
const write = (name: string, lines: string[]) => writeFileSync(join(folder, name), lines.join('\n'));
write('plain.csv', [...head, ...rowsOf(2023)]);
write('both.csv', [...head, ...rowsOf(2019), ...rowsOf(2020, warmer)]);
write('swapped.csv', [...head, ...rowsOf(2023, swapped)]);

function siteOn(weather: string): Site {
  const file = join(folder, 'site.yaml');
  writeFileSync(file, example.replace(/^weather: .*$/m, `weather: ${weather}`));
  return loadSite(file).base;
}
const meanAir = ({ airC }: { airC: Float64Array }) => airC.reduce((sum, c) => sum + c, 0) / 8760;

test('a year comes from its file with the judgement of it, and the same one is handed out again', () => {
  const prepared = new PreparedCache();
  const site = siteOn('plain.csv');
  const weather = siteWeather(site, prepared);
  expect(weather.judgement).toMatchObject({ verdict: 'good' });
  expect(siteWeather(site, prepared)).toBe(weather);
  expect(siteWeatherYears(site, prepared)).toEqual([weather]);
});

test('of a file of several years each is one, by its calendar', () => {
  const site = siteOn('{ years: both.csv }');
  const years = siteWeatherYears(site);
  expect(years.map(({ source }) => source)).toEqual(['both.csv 2019', 'both.csv 2020']);
  expect(meanAir(years[1]!) - meanAir(years[0]!)).toBeCloseTo(2, 6);
  const { weather } = site;
  if (!('file' in weather)) throw new Error('the weather is a file');
  const missing = { ...site, weather: { ...weather, file: { ...weather.file, calendarYear: 2031 } } };
  expect(() => siteWeather(missing)).toThrow(WeatherError);
  expect(() => siteWeather(missing)).toThrow(/^both\.csv line 1: no rows of 2031/);
});

test('a year of a file that cannot be read is told by what is wrong with it', () => {
  write('half.csv', [...head, ...rowsOf(2019), ...rowsOf(2020).slice(0, 3000)]);
  const site = siteOn('{ years: half.csv }');
  const { weather } = site;
  if (!('file' in weather)) throw new Error('the weather is a file');
  const broken = { ...site, weather: { ...weather, file: { ...weather.file, calendarYear: 2020 } } };
  expect(() => siteWeather(broken)).toThrow(WeatherError);
});

test('weather that is rejected stops a year unless the site accepts it', () => {
  expect(() => siteWeather(siteOn('swapped.csv'))).toThrow(RejectedWeatherError);
  const weather = siteWeather(siteOn('{ file: swapped.csv, accepted: true }'));
  expect(weather.judgement).toMatchObject({ verdict: 'rejected' });
});

// The demo's file is from 430 m; 6.5 K for each kilometre of the standard atmosphere.
test('temperatures move with the elevation where the site says so', () => {
  const at = (elevation: string, moveTemperature: boolean) => {
    const site = siteOn(`{ file: plain.csv, moveTemperature: ${moveTemperature} }`);
    return { ...site, place: { ...site.place, elevation: Number(elevation) } };
  };
  const still = meanAir(siteWeather(at('1430', false)));
  expect(meanAir(siteWeather(at('1430', true)))).toBeCloseTo(still - 6.5, 1);
  expect(meanAir(siteWeather(at('430', true)))).toBeCloseTo(still, 6);
});

test('a clock that is wrong is set right', () => {
  const late = siteOn('{ file: plain.csv, accepted: true, clock: { shift: 1 h } }');
  const plain = siteOn('{ file: plain.csv, accepted: true }');
  const noon = 200 * 24 + 12;
  expect(siteWeather(late).airC[noon + 1]).toBe(siteWeather(plain).airC[noon]);
  const summer = siteOn('{ file: plain.csv, accepted: true, clock: { summerTime: { from: 04-01, to: 10-01 } } }');
  const notices = siteWeather(summer).notices.map(({ text }) => text);
  expect(notices).toContain('the clock of the file was taken as an hour ahead from 1 April to 1 October');
});

const months = {
  irradiation: [1.4, 2.4, 3.6, 4.6, 5.4, 5.9, 6, 5.1, 3.8, 2.4, 1.4, 1.1].map((kWh) => `${kWh} kWh/m2`),
  air: [-12, -9, -3, 4, 11, 16, 19, 18, 13, 6, -2, -9].map((airC) => `${airC} degC`),
};
const daysOfMonth = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** A site whose weather is made from monthly means. */
function siteFrom(more: object = {}): Site {
  const site = loadSite(join(root, 'examples/kettle-pond.yaml'));
  return changedDesign(site, { weather: { months: { ...months, ...more }, seed: 3 } });
}

test('a year made from monthly means has them, and is judged as made', () => {
  const site = siteFrom();
  const weather = siteWeather(site);
  expect(weather.kind).toBe('made');
  expect(weather.judgement!.line).not.toBe('');
  const inJuly =
    weather.ghiWm2.subarray(181 * 24, 212 * 24).reduce((sum, wm2) => sum + wm2, 0) / 1000 / daysOfMonth[6]!;
  expect(inJuly).toBeCloseTo(6, 1);
  expect(weather.place).toMatchObject({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6, elevationM: 430 });
  expect(siteWeatherYears(site)).toHaveLength(1);
  expect(madeWeather(site, 3, 0).ghiWm2).toEqual(weather.ghiWm2);
  expect(madeWeather(site, 4, 0).ghiWm2).not.toEqual(weather.ghiWm2);
});

test('clearness, wind, snow and the daily extremes of the months are used where they are given', () => {
  const twelve = (value: number | string) => new Array<number | string>(12).fill(value);
  const calm = madeWeather(siteFrom(), 3, 0);
  expect(calm.snowDepthM === null || Math.max(...calm.snowDepthM) === 0).toBe(true);
  const windy = madeWeather(siteFrom({ wind: twelve('9 m/s') }), 3, 0);
  expect(windy.windMs.reduce((sum, ms) => sum + ms, 0) / 8760).toBeGreaterThan(8);
  const snowy = madeWeather(siteFrom({ snowyDays: [10, 8, 6, 0, 0, 0, 0, 0, 0, 0, 6, 10] }), 3, 0);
  expect(Math.max(...snowy.snowDepthM!)).toBeGreaterThan(0.02);
  const air = (more: object) => {
    const { airC } = madeWeather(siteFrom(more), 3, 0);
    const july = airC.subarray(181 * 24, 212 * 24);
    return Math.max(...july) - Math.min(...july);
  };
  const even = months.air.map((mean) => `${Number.parseInt(mean, 10) - 1} degC`);
  const wide = months.air.map((mean) => `${Number.parseInt(mean, 10) + 1} degC`);
  expect(air({ airMin: even, airMax: wide })).toBeLessThan(0.8 * air({}));
  // The lowest alone says nothing of the difference.
  expect(air({ airMin: even })).toBe(air({}));
  const { irradiation: _, ...withoutSun } = months;
  const site = loadSite(join(root, 'examples/kettle-pond.yaml'));
  const dull = changedDesign(site, { weather: { months: { ...withoutSun, clearness: twelve(0.3) } } });
  const bright = changedDesign(site, { weather: { months: { ...withoutSun, clearness: twelve(0.6) } } });
  const sum = (of: Site) => madeWeather(of, 3, 0).ghiWm2.reduce((all, wm2) => all + wm2, 0);
  expect(sum(bright) / sum(dull)).toBeCloseTo(2, 1);
});

test('a spread of the months is that of the years that can be made', () => {
  const [measured, wide] = [1, 2].map((spread) => madeSpread(siteFrom(), spread).months);
  expect(measured).toHaveLength(12);
  for (let m = 0; m < 12; m++) expect(wide![m]).toBeGreaterThan(measured![m]!);
  expect(() => madeWeather(siteOn('plain.csv'), 1, 0)).toThrow(SiteError);
  expect(() => madeWeather(siteOn('plain.csv'), 1, 0)).toThrow(
    /made years need weather from monthly means, got a file/,
  );
});

/** A load of 100 W AC at all hours of a day that is repeated, 200 W from noon to one. */
const dayOfLoad = [
  'time,ac [W]',
  ...Array.from({ length: 24 }, (_, hour) => `${String(hour).padStart(2, '0')}:00,${hour === 12 ? 200 : 100}`),
];

function measuredSite(file: string, more: object = {}): Site {
  const site = loadSite(join(root, 'examples/kettle-pond.yaml'));
  const design = changedDesign(site, {});
  return { ...design, measuredLoad: { file: { path: join(folder, file), written: file }, ...more } } as Site;
}

test('a measured load is read from its file, once, and scaled where a yearly energy is given', () => {
  write('load.csv', dayOfLoad);
  const prepared = new PreparedCache();
  const site = measuredSite('load.csv');
  const load = measuredLoadOf(site, prepared)!;
  expect([load.acW[12], load.acW[13], load.energyWhYear]).toEqual([200, 100, 2500 * 365]);
  expect(measuredLoadOf(site, prepared)).toBe(load);
  const scaled = measuredLoadOf(measuredSite('load.csv', { yearly: 500_000 }), prepared)!;
  expect(scaled.energyWhYear).toBeCloseTo(500_000, 3);
  expect(measuredLoadOf(loadSite(join(root, 'examples/kettle-pond.yaml')).base, prepared)).toBeNull();
});

test('a measured load that is not there or is no table of loads is a problem of the site file', () => {
  const read = (name: string) => () => measuredLoadOf(measuredSite(name), new PreparedCache());
  expect(read('none.csv')).toThrow(SiteError);
  expect(read('none.csv')).toThrow(/measuredLoad.*none\.csv .*; expected a table of loads/);
  write('words.csv', ['time,words', '00:00,many']);
  expect(read('words.csv')).toThrow(SiteError);
});
