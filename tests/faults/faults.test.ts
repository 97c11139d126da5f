import { readFileSync } from 'node:fs';
import { afterAll, expect, test } from 'vitest';
import { parseSite, SiteError } from '../../packages/site/src/index.js';
import { examineWeather, RejectedWeatherError, readWeather, WeatherError } from '../../packages/weather/src/index.js';
import { simulateSite } from '../../packages/year/src/index.js';
import { chance, damaged } from './cases.js';

// Damaged site and weather files, the same ones every time. A short run in the suite; many more with
// `npm run faults -- --cases 10000 --seed 7`.

const cases = Number(process.env.FAULT_CASES ?? 12);
const firstSeed = Number(process.env.FAULT_SEED ?? 1);
const root = new URL('../../', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, root), 'utf8');

const sites = ['examples/kettle-pond.yaml', 'examples/everything.yaml'].map((path) => ({
  file: new URL(path, root).pathname,
  text: read(path),
}));
const weatherText = read('data-demo/kettle-pond.csv');

/** Longest that one case may take, ms: what takes longer is as good as hung. */
const longestMs = 20_000;
const longestMessage = 20_000;

/** Runs a case; refusal by one of the program's own errors is right, anything else is a fault. */
function refusedOr<Result>(seed: number, run: () => Result): Result | null {
  const began = performance.now();
  try {
    return run();
  } catch (error) {
    const known = error instanceof SiteError || error instanceof WeatherError || error instanceof RejectedWeatherError;
    if (!known) throw new Error(`case ${seed}: ${String(error)}`, { cause: error });
    expect(error.message.length, `case ${seed}`).toBeLessThan(longestMessage);
    expect(error.message, `case ${seed}`).not.toMatch(
      /undefined|\[object |Invalid input: |native code|call stack|\n\s+at /,
    );
    return null;
  } finally {
    expect(performance.now() - began, `case ${seed}: time, ms`).toBeLessThan(longestMs);
  }
}

const count = { siteRefused: 0, siteRun: 0, weatherRefused: 0, weatherRead: 0 };

test(`${cases} damaged site files: a year that closes without NaN, or a message`, () => {
  for (let seed = firstSeed; seed < firstSeed + cases; seed++) {
    const pick = chance(seed);
    const { file, text } = sites[pick(sites.length)]!;
    const site = refusedOr(seed, () => parseSite(damaged(text, pick), file));
    const result = site && refusedOr(seed, () => simulateSite(site.base));
    if (!result) {
      count.siteRefused++;
      continue;
    }
    count.siteRun++;
    for (const [column, hours] of Object.entries(result.ledger)) {
      if (hours instanceof Float64Array && !hours.every(Number.isFinite)) {
        throw new Error(
          `case ${seed}: ${column} is not finite in hour ${hours.findIndex((value) => !Number.isFinite(value))}`,
        );
      }
    }
  }
  if (cases >= 12) expect(count.siteRun).toBeGreaterThan(cases / 30);
  if (cases >= 12) expect(count.siteRefused).toBeGreaterThan(cases / 30);
});

test(`${cases} damaged weather files: a whole year without NaN, or a message with its line`, () => {
  for (let seed = firstSeed; seed < firstSeed + cases; seed++) {
    const pick = chance(seed);
    const weather = refusedOr(seed, () => readWeather(damaged(weatherText, pick), { source: 'damaged.csv' }));
    if (!weather) {
      count.weatherRefused++;
      continue;
    }
    count.weatherRead++;
    for (const values of [weather.ghiWm2, weather.dniWm2, weather.dhiWm2, weather.airC, weather.windMs]) {
      if (values.length !== 8760 || !values.every(Number.isFinite)) throw new Error(`case ${seed}: not a whole year`);
    }
    expect(Number.isFinite(examineWeather(weather).year.ghiKWhM2), `case ${seed}`).toBe(true);
  }
  if (cases >= 12) expect(count.weatherRead).toBeGreaterThan(0);
  if (cases >= 12) expect(count.weatherRefused).toBeGreaterThan(0);
});

afterAll(() => {
  if (process.env.FAULT_CASES) process.stdout.write(`${JSON.stringify({ firstSeed, cases, ...count })}\n`);
});
