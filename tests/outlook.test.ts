import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { outlookText } from '@wintergap/report';
import { loadSite, parseSite } from '@wintergap/site';
import {
  type Outlook,
  type OutlookTask,
  outlookFrom,
  outlookOf,
  outlookWeather,
  type YearFigures,
} from '@wintergap/study';
import { simulateSite } from '@wintergap/year';
import { afterAll, expect, test } from 'vitest';
import { builtPackage } from './built-program.js';

const root = join(import.meta.dirname, '..');
const file = join(root, 'examples/kettle-pond.yaml');
const site = loadSite(file).base;
const task = (years: number, seed = 1): OutlookTask => ({
  site,
  weather: outlookWeather(site, { years, seed }),
});
const folder = mkdtempSync(join(tmpdir(), 'wintergap-outlook-'));
afterAll(() => rmSync(folder, { recursive: true }));

const five = await outlookOf(task(5));

test('the same seed gives the same years to the last bit, in this thread and on two workers', async () => {
  const { outlookOf: outlookOfBuilt } = (await import(pathToFileURL(builtPackage('study')).href)) as {
    outlookOf: typeof outlookOf;
  };
  const { years } = await outlookOfBuilt(task(5), { workers: 2 });
  expect(years.map((year) => Object.values(year))).toEqual(five.years.map((year) => Object.values(year)));
});

test('a year does not depend on how many others are run', async () => {
  const { years } = await outlookOf(task(2));
  expect(years).toEqual(five.years.slice(0, 2));
});

test('another seed gives other years', async () => {
  const { years } = await outlookOf(task(1, 2));
  expect(years[0]!.generatorHours).not.toBe(five.years[0]!.generatorHours);
});

test('a larger spread makes the years differ more in their sun', async () => {
  const weather = outlookWeather(site, { years: 5, spread: 2 });
  const { years } = await outlookOf({ site, weather });
  const range = (of: readonly YearFigures[]) => {
    const sums = of.map(({ ghiKWhPerM2 }) => ghiKWhPerM2);
    return Math.max(...sums) - Math.min(...sums);
  };
  expect(range(years)).toBeGreaterThan(1.5 * range(five.years));
});

test('progress counts every year once', async () => {
  const seen: number[] = [];
  await outlookOf(task(3), { onYear: (done, total) => seen.push(done / total) });
  expect(seen).toEqual([1 / 3, 2 / 3, 1]);
});

test('several real years are run as they are, each as if it were the only one', async () => {
  const weather = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8');
  writeFileSync(join(folder, 'first.csv'), weather);
  copyFileSync(join(folder, 'first.csv'), join(folder, 'second.csv'));
  const text = readFileSync(file, 'utf8').replace(
    /^weather: .*$/m,
    'weather: { file: first.csv, otherYears: [second.csv, first.csv] }',
  );
  const siteFile = join(folder, 'site.yaml');
  const real = parseSite(text, siteFile).base;
  const kind = outlookWeather(real);
  expect(kind).toEqual({ kind: 'real', years: 3 });
  expect(outlookWeather(real, { years: 50 })).toMatchObject({ kind: 'resampled', from: 3, years: 50 });
  const outlook = await outlookOf({ site: real, weather: kind });
  const { hours } = simulateSite(real).summary.generator;
  expect(outlook.years.map(({ generatorHours }) => generatorHours)).toEqual([hours, hours, hours]);
  expect(outlookText(outlook, 'metric')).toContain('3 real years');
});

test('monthly means give a new year each time, whose months depart from them unless no spread is wanted', async () => {
  const text = readFileSync(file, 'utf8').replace(
    /^weather: .*$/m,
    `weather:
  months:
    irradiation: [1.4 kWh/m2, 2.4 kWh/m2, 3.7 kWh/m2, 4.7 kWh/m2, 5.5 kWh/m2, 6 kWh/m2,
                  6 kWh/m2, 5 kWh/m2, 3.6 kWh/m2, 2.3 kWh/m2, 1.3 kWh/m2, 1 kWh/m2]
    air: [-12 degC, -9 degC, -3 degC, 5 degC, 11 degC, 16 degC, 19 degC, 18 degC, 13 degC, 7 degC, -1 degC, -9 degC]`,
  );
  const made = parseSite(text, file).base;
  const weather = outlookWeather(made, { years: 3 });
  expect(weather).toEqual({ kind: 'made', years: 3, seed: 1, spread: 1 });
  const outlook = await outlookOf({ site: made, weather });
  const hours = (of: readonly YearFigures[]) => new Set(of.map(({ generatorHours }) => generatorHours)).size;
  const sums = (of: readonly YearFigures[]) => new Set(of.map(({ ghiKWhPerM2 }) => ghiKWhPerM2.toFixed(3))).size;
  expect([hours(outlook.years), sums(outlook.years)]).toEqual([3, 3]);
  expect(outlookText(outlook, 'metric').replace(/\s+/g, ' ')).toContain('measured in four winters at Lyngby');
  const none = await outlookOf({ site: made, weather: outlookWeather(made, { years: 3, spread: 0 }) });
  expect([hours(none.years), sums(none.years)]).toEqual([3, 1]);
});

/** Forty made-up years: the engine runs 1 to 40 h, ten litres an hour; two years are dark for a day. */
const forty = Array.from({ length: 40 }, (_, i): YearFigures => {
  const hours = ((i * 7) % 40) + 1;
  return {
    weather: `made up ${i}`,
    generatorHours: hours,
    generatorMonthHours: new Array(12).fill(hours / 12),
    generatorWeekHours: new Array(52).fill(hours / 52),
    starts: 1,
    fuelLitres: 10 * hours,
    darkHours: hours > 38 ? 24 : 0,
    darkKWh: hours > 38 ? 5 : 0,
    loadKWh: 1000,
    throttledKWh: 0,
    lowestStateOfCharge: 0.5 - hours / 100,
    autonomyDays: 3,
    ghiKWhPerM2: 1100,
  };
});
const stored = { ...site, generator: { ...site.generator!, fuel: { ...site.generator!.fuel, stored: 300 } } };
const known = outlookFrom({ ...task(40), site: stored }, forty);

test('usual, one-in-ten and worst are the median, the 90th percentile and the worst, each figure by itself', () => {
  const { generatorHours, lowestStateOfCharge } = known.ranked;
  expect(generatorHours.usual.value).toBeCloseTo(20.5, 12);
  // Rank 0.9 x 39 = 35.1 counted from 0.
  expect(generatorHours.oneInTen.value).toBeCloseTo(36.1, 12);
  expect(generatorHours.worst).toBe(40);
  expect(forty[generatorHours.worstYear]!.generatorHours).toBe(40);
  expect(lowestStateOfCharge.worst).toBeCloseTo(0.1, 12);
  expect(lowestStateOfCharge.oneInTen.value).toBeCloseTo(0.5 - 0.361, 12);
  const { low, high } = lowestStateOfCharge.oneInTen;
  expect(low! < 0.139 && high! > 0.139).toBe(true);
});

test('loss-of-load probability is told as a share of time and of energy', () => {
  expect(known.lossOfLoad.timeShare).toBeCloseTo(48 / (8760 * 40), 15);
  expect(known.lossOfLoad.energyShare).toBeCloseTo(10 / 40_000, 15);
  expect(known.lossOfLoad.years.share).toBe(0.05);
});

test('the fuel store runs out in the years that burn more than it holds', () => {
  expect(known.fuelStore).toMatchObject({ storedLitres: 300, runsOut: { share: 0.25 } });
  const { stored: _, ...fuel } = site.generator!.fuel;
  const without = { ...site, generator: { ...site.generator!, fuel } };
  expect(outlookFrom({ ...task(40), site: without }, forty).fuelStore).toBeNull();
});

test('the page fits 80 columns and answers first', () => {
  for (const units of ['metric', 'us'] as const) {
    for (const outlook of [known, five]) {
      const text = outlookText(outlook, units);
      for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
      expect(text).toMatch(/^Kettle Pond honey house: the generator runs \d+ h in a usual year,/);
    }
  }
  const text = outlookText(known, 'metric').replace(/\s+/g, ' ');
  expect(text).toContain('A fuel store of 300 L, filled once a year, runs out in 25 % of years');
  expect(text).toContain('90th percentile of the generator hours:');
});

test.each([
  [{ years: 0 }, /years must be a whole number from 1 to 10000, got 0/],
  [{ years: 3, seed: -1 }, /seed must be a whole number/],
])('%j is refused', async (wish, message) => {
  const refused = async () => outlookOf({ site, weather: outlookWeather(site, wish) });
  await expect(refused()).rejects.toThrow(message);
});

test('the page says what the years are, how far they spread and why, and where the own year stands', () => {
  const flat = (outlook: Outlook) => outlookText(outlook, 'metric').replace(/\s+/g, ' ');
  expect(flat(five)).toMatch(
    /blocks of days of one year, .* standard deviation of \d+ % \(\w+\) to \d+ % \(\w+\), assumed from months measured .* at Lyngby/,
  );
  expect(flat(known)).toContain('No spread between years was added, so bad years are understated');
  const own = (generatorHours: number) => flat({ ...known, ownYear: { ...forty[0]!, generatorHours } });
  expect(own(0)).toContain("The site's own year as it is has 0 generator hours: easier than all of them.");
  expect(own(50)).toContain("The site's own year as it is has 50 generator hours: worse than all of them.");
  expect(own(10.5)).toContain('worse than 10 of the 40.');
});
