import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSite } from '@wintergap/site';
import { commonYears, rankYears, yearFigures } from '@wintergap/study';
import { PreparedCache, simulateSite, simulateWeather } from '@wintergap/year';
import { linearRegression, mean } from 'simple-statistics';
import { afterAll, describe, expect, test } from 'vitest';
import { holds, liesWithin, type Source } from '../validation/hold.js';

const shared = process.env.WINTERGAP_SHARED ?? fileURLToPath(new URL('../../../shared', import.meta.url));
const measured = (year: number): string => `${shared}/weather/lyngby-${year}.csv`;
const folder = mkdtempSync(join(tmpdir(), 'wintergap-next-year-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Blanks take the value of the same hour of the nearest day that has one. */
function filled(text: string): string {
  const lines = text.trim().split('\n');
  const rows = lines.slice(1).map((line) => line.split(','));
  const whole = rows.map((row, h) =>
    row.map((value, column) => {
      for (let days = 0; value === '' && days < 60; days++) {
        value = rows[h - 24 * days]?.[column] || rows[h + 24 * days]?.[column] || '';
      }
      return value;
    }),
  );
  return [lines[0], ...whole.map((row) => row.join(','))].join('\n');
}

/** A small steady load in a northern place: the engine runs from November to March. */
const siteOf = (year: number) =>
  parseSite(
    `name: Lyngby
place: { latitude: 55.79064, longitude: 12.52505, elevation: 50 m, utcOffset: 1 h }
weather: ${year}.csv
arrays:
  - name: field
    module: { power: 300 W, vmp: 32.5 V, imp: 9.24 A, voc: 39.9 V, isc: 9.82 A, cells: 60,
              powerPerK: -0.39 %, vocPerK: -0.31 %, iscPerK: 0.05 %, noct: 45 degC }
    inSeries: 2
    strings: 5
    mount: { kind: fixed, tilt: 70, azimuth: 180 }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 120 A, efficiency: 97 % }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: 1000 Ah, atRate: 20 h, floor: 30 % }
inverter: { power: 4 kW, surge: 8 kW, idle: 18 W, efficiency: 93 % }
loads: [{ name: all, power: 120 W, bus: ac }]
generator:
  output: { bus: dc, power: 3 kW }
  fuel: { kind: petrol, atFull: 1.6 L/h, idle: 0.5 L/h, price: 1.55 /L }
  start: { below: 45 %, between: [8, 20] }
  stop: { above: 80 % }
`,
    join(folder, `${year}.yaml`),
  ).base;

const absent = [2016, 2017].filter((year) => !existsSync(measured(year)));
if (absent.length > 0) {
  console.warn(`one measured year is not held against the next: there is no ${absent.map(measured).join(', ')}`);
  test.skip('the outlook from one measured year is not held against the next', () => {});
} else {
  for (const year of [2016, 2017])
    writeFileSync(join(folder, `${year}.csv`), filled(readFileSync(measured(year), 'utf8')));
  const first = siteOf(2016);
  const prepared = new PreparedCache(8);
  const count = 120;
  const outlook = (spread: number) => {
    const { weatherOf } = commonYears(first, { years: count, seed: 1, spread });
    return Array.from({ length: count }, (_, n) => {
      const weather = weatherOf(n);
      const dark = weather.ghiWm2.subarray(304 * 24).reduce((sum, wm2) => sum + wm2, 0);
      const january = weather.ghiWm2.subarray(0, 31 * 24).reduce((sum, wm2) => sum + wm2, 0);
      return { ...yearFigures(simulateWeather(first, weather, prepared)), dark: dark + january };
    });
  };
  const [none, usual, double] = [outlook(0), outlook(1), outlook(2)];
  const bad = (years: typeof none) => rankYears(years, 'generatorHours').oneInTen;

  describe('DTU Construct climate station, Lyngby, 2016 and 2017', () => {
    // The year that followed was duller in November and February: without a spread fewer than one year in ten is as bad.
    test('the year that followed lies between the usual and the one-in-ten year made from the one before', () => {
      const followed = simulateSite(siteOf(2017)).summary.generator.hours;
      const ranked = rankYears(usual, 'generatorHours');
      const station: Source = { from: 'DTU Construct climate station, Lyngby, 2016 and 2017', sure: 'independent' };
      const what = 'engine in 2017, between the usual year made from 2016 and the top of its one in ten, h';
      liesWithin(station, what, followed, ranked.usual.value, ranked.oneInTen.high!);
      expect(followed).toBeGreaterThan(bad(none).value);
    });

    test('the one-in-ten year gets worse with the spread', () => {
      expect(bad(usual).value).toBeGreaterThan(1.05 * bad(none).value);
      expect(bad(double).value).toBeGreaterThan(1.15 * bad(usual).value);
    });

    // Engine hours per per cent of the sunshine of November to January: in years that differ by their days alone, and in
    // what the spread adds to the same years. Days that were dimmed instead of exchanged gave half the response.
    test('the engine answers to a spread as to years that differ by nature', () => {
      const middle = mean(none.map(({ dark }) => dark)) / 100;
      const natural = linearRegression(none.map(({ dark, generatorHours }) => [dark / middle, generatorHours])).m;
      const added = linearRegression(
        double.map((year, n) => [(year.dark - none[n]!.dark) / middle, year.generatorHours - none[n]!.generatorHours]),
      ).m;
      expect(natural).toBeLessThan(-0.5);
      const law: Source = { from: 'years that differ by their days alone', sure: 'law' };
      holds(law, 'engine hours for a per cent of winter sun, by the spread', added, natural, { share: 0.3 });
    });
  });
}
