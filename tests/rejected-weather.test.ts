import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { acceptingWeather, changedDesign, loadSite } from '@wintergap/site';
import { RejectedWeatherError, WeatherError } from '@wintergap/weather';
import { simulateSite } from '@wintergap/year';
import { afterAll, expect, test } from 'vitest';
import { program } from './built-program.js';

const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-rejected-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const table = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8');
const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');

/** The demo site on weather whose rows are changed. Columns: time, global, beam, diffuse, air, wind, snow depth. */
function siteWith(name: string, change: (row: string[]) => string[]): string {
  const lines = table.split('\n').map((line) => (/^\d/.test(line) ? change(line.split(',')).join() : line));
  writeFileSync(join(folder, `${name}.csv`), lines.join('\n'));
  const file = join(folder, `${name}.yaml`);
  writeFileSync(file, example.replace(/^weather: .*$/m, `weather: ${name}.csv`));
  return file;
}

const swapped = siteWith('swapped', ([time, global, beam, diffuse, ...rest]) => [
  time!,
  global!,
  diffuse!,
  beam!,
  ...rest,
]);

test('a year on rejected weather stops with the report, exit code 2, and --accept-weather warns in the first line', () => {
  const run = (...args: string[]) => spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: folder });
  const stopped = run('tilt', swapped);
  expect(stopped.status).toBe(2);
  expect(stopped.stdout).toBe('');
  expect(stopped.stderr).toMatch(/^weather swapped\.csv: rejected \(closure, /);
  expect(stopped.stderr).toMatch(/--accept-weather/);
  const gone = run('year', swapped, '--quiet', '--years', '1', '--accept-weather');
  expect(gone.status).toBe(0);
  expect(gone.stdout).toMatch(/^WARNING: .*\nswapped\.csv: rejected \(closure/);
});

test('accepted weather keeps its verdict and its cautions in the summary, in variants and changed designs too', () => {
  expect(() => simulateSite(loadSite(swapped).base)).toThrow(RejectedWeatherError);
  const site = acceptingWeather(loadSite(swapped));
  const { summary } = simulateSite(site.base);
  expect(summary.weather.verdict).toBe('rejected');
  expect(summary.cautions.map(({ code }) => code)).toContain('weather-closure');
  for (const variant of site.variants.values()) expect(variant.weather).toMatchObject({ accepted: true });
  expect(changedDesign(site, { 'bank.capacity': '800 Ah' }).weather).toMatchObject({ accepted: true });
});

test('light that no array can be worked out with is blamed on the weather file and its line', () => {
  const mad = siteWith('mad', ([time, , , , ...rest]) => [time!, '1500', '1500', '1500', ...rest]);
  const firstRow = table.split('\n').findIndex((line) => /^\d/.test(line)) + 1;
  const { base } = acceptingWeather(loadSite(mad));
  const run = () => simulateSite(base);
  expect(run).toThrow(WeatherError);
  expect(run).toThrow(`mad.csv line ${firstRow}: global, beam and diffuse irradiance of the hour from 01-01 00:00`);
});

test('good weather is good in the summary and adds no caution', () => {
  const { summary } = simulateSite(loadSite(join(root, 'examples/kettle-pond.yaml')).base);
  expect(summary.weather.verdict).toBe('good');
  expect(summary.cautions.filter(({ code }) => code.startsWith('weather-'))).toEqual([]);
});
