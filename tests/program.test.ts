import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Contract } from '@wintergap/tally';
import Papa from 'papaparse';
import { afterAll, expect, test } from 'vitest';
import { program } from './built-program.js';

const root = join(import.meta.dirname, '..');
const site = join(root, 'examples/kettle-pond.yaml');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-'));

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: folder });
  return { status, stdout, stderr };
}

/** Few common years, for what does not depend on how many there are. */
const few = ['--years', '2'];
const own = ['--years', '1'];
const json = run('year', site, ...few, '--json').stdout;

test('year answers first, fits 80 columns, and closes', () => {
  const { status, stdout, stderr } = run('year', site);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const lines = stdout.split('\n');
  expect(lines[0]).toMatch(/^Kettle Pond honey house: the generator runs \d+ h in a usual year/);
  for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
  for (const month of ['Jan', 'Jun', 'Dec', 'Year']) expect(stdout).toMatch(new RegExp(`^${month} `, 'm'));
});

/** Every key of the contract, nested; months and cautions by their first item. */
const contract = {
  site: ['name', 'latitude', 'longitude'],
  weather: [
    'source',
    'hours',
    'ghiKWhPerM2',
    'meanAirTemp',
    'minAirTemp',
    'verdict',
    'verdictLine',
    'mendedHours',
    'snowFrom',
  ],
  array: ['ratedKW', 'planeKWhPerM2', 'availableKWh', 'usedKWh', 'throttledKWh', 'months'],
  'array.months': ['planeKWhPerM2', 'availableKWh', 'usedKWh', 'throttledKWh'],
  load: ['acKWh', 'dcKWh', 'servedKWh', 'darkKWh', 'darkHours'],
  generator: ['hours', 'starts', 'fuelLitres', 'fuelCost', 'toBusKWh', 'months'],
  'generator.months': ['hours', 'starts', 'fuelLitres'],
  shortfall: ['kWh', 'hours', 'months'],
  'shortfall.months': ['kWh', 'hours'],
  throttle: ['kWh', 'hours', 'firstDate', 'lastDate', 'calendar'],
  bank: [
    'usableKWh',
    'minStateOfCharge',
    'meanStateOfCharge',
    'minTemp',
    'maxTemp',
    'chargeKWh',
    'dischargeKWh',
    'fullCycles',
    'autonomyDays',
    'longestDaysBelowHalf',
  ],
  ledger: ['worstHourImbalanceKWh', 'yearImbalanceKWh', 'settledAfterYears'],
};

function keysOf(summary: Contract): Record<string, string[]> {
  const keys: Record<string, string[]> = {};
  for (const [name, part] of Object.entries(summary)) {
    if (Array.isArray(part)) continue;
    keys[name] = Object.keys(part);
    if ('months' in part) keys[`${name}.months`] = Object.keys(part.months[0]!);
  }
  return keys;
}

test('year --json is the contract, whole and in its units', () => {
  const document: Contract & Record<'takenAs' | 'common', unknown> = JSON.parse(json);
  const { takenAs: _, common: __, ...summary } = document;
  expect(Object.keys(document)).toEqual([
    'site',
    'weather',
    'array',
    'load',
    'generator',
    'shortfall',
    'throttle',
    'bank',
    'ledger',
    'cautions',
    'takenAs',
    'common',
  ]);
  expect(summary.weather.hours).toBe(8760);
  for (const part of [summary.array, summary.generator, summary.shortfall]) expect(part.months).toHaveLength(12);
  expect(summary.throttle.calendar).toHaveLength(12);
  for (const row of summary.throttle.calendar) expect(row).toHaveLength(24);
  const shares = [summary.bank.minStateOfCharge, summary.bank.meanStateOfCharge, ...summary.throttle.calendar.flat()];
  for (const share of shares) expect(share >= 0 && share <= 1).toBe(true);
  const total = (values: number[]) => values.reduce((sum, value) => sum + value, 0);
  expect(total(summary.generator.months.map(({ hours }) => hours))).toBeCloseTo(summary.generator.hours, 9);
  expect(total(summary.array.months.map(({ usedKWh }) => usedKWh))).toBeCloseTo(summary.array.usedKWh, 9);
  const { availableKWh, usedKWh, throttledKWh } = summary.array;
  expect(usedKWh + throttledKWh).toBeCloseTo(availableKWh, 6);
  expect(keysOf(summary)).toEqual(contract);
  expect(summary.load.servedKWh + summary.load.darkKWh).toBeCloseTo(summary.load.acKWh + summary.load.dcKWh, 6);
  expect(summary.ledger.worstHourImbalanceKWh).toBeLessThan(1e-9);
});

test('year lists what it assumes: short on the page, with key, value and source in JSON', () => {
  const { takenAs } = JSON.parse(json);
  expect(takenAs).toContainEqual({
    key: 'generator.warmUp',
    value: '3 min',
    text: 'engine warm-up 3 min',
    source: expect.stringMatching(/no source/),
  });
  const page = run('year', site, ...own).stdout.replace(/\s+/g, ' ');
  const listed = takenAs.map(({ text }: { text: string }) => text).join(', ');
  expect(page).toContain(`Taken as, since the site file does not say: ${listed}.`);
});

test('the same input gives the same output to the last bit', () => {
  expect(run('year', site, ...few, '--json').stdout).toBe(json);
});

test('the ledger file has 8760 rows that close, and is written whole', () => {
  const file = join(folder, 'ledger.csv');
  expect(run('year', site, ...own, '--csv', file, '--quiet').status).toBe(0);
  const { data } = Papa.parse<Record<string, string>>(readFileSync(file, 'utf8'), {
    header: true,
    skipEmptyLines: true,
  });
  expect(data).toHaveLength(8760);
  const into = ['array used [kWh]', 'generator [kWh]'];
  const out = [
    'ac served [kWh]',
    'dc served [kWh]',
    'own use [kWh]',
    'inverter loss [kWh]',
    'converter loss [kWh]',
    'charger loss [kWh]',
    'bank loss [kWh]',
    'self discharge [kWh]',
  ];
  const sum = (row: Record<string, string>, names: string[]) =>
    names.reduce((total, name) => {
      expect(row[name], name).toBeDefined();
      return total + Number(row[name]);
    }, 0);
  let worst = 0;
  for (let h = 1; h < data.length; h++) {
    const stored = Number(data[h]!['bank stored [kWh]']) - Number(data[h - 1]!['bank stored [kWh]']);
    worst = Math.max(worst, Math.abs(sum(data[h]!, into) - sum(data[h]!, out) - stored));
  }
  expect(worst).toBeLessThan(1e-9);
  expect(readdirSync(folder).filter((name) => name.includes('partial'))).toEqual([]);
});

test('a file that cannot be written is said, and nothing is left half-written', () => {
  const { status, stderr } = run('year', site, '--csv', '/proc/nowhere/ledger.csv');
  expect(status).toBe(2);
  expect(stderr).toMatch(/cannot be written/);
  expect(stderr).not.toMatch(/\n {4}at /);
});

test('compare sets the variants against the base', () => {
  const { status, stdout } = run('compare', site, ...few);
  expect(status).toBe(0);
  for (const name of ['base', 'fixed', 'seasonal tilt', 'taller pole'])
    expect(stdout).toMatch(new RegExp(`^${name} `, 'm'));
  for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
});

test('weather says what the demo file holds, and converts it to a table that reads the same', () => {
  const table = join(folder, 'table.csv');
  const { status, stdout } = run('weather', join(root, 'data-demo/kettle-pond.csv'), '--table', table);
  expect(status).toBe(0);
  expect(stdout).toMatch(/can be trusted/);
  expect(run('weather', table).stdout).toContain(stdout.split('\n').find((line) => line.startsWith('Dec'))!);
});

test('start gives a site that runs, and leaves what is there alone', () => {
  const place = join(folder, 'my-place');
  expect(run('start', place).status).toBe(0);
  expect(run('year', join(place, 'site.yaml'), ...own, '--quiet').stdout).toMatch(/the generator runs/);
  const again = run('start', place);
  expect(again.status).toBe(2);
  expect(again.stderr).toMatch(/already there/);
});

test('check lists the limits and ends with the cautions; an exceeded limit is exit code 1', () => {
  const fine = run('check', site);
  expect(fine.status).toBe(0);
  expect(fine.stdout).toMatch(/licensed people/);
  const risky = join(folder, 'risky.yaml');
  const text = readFileSync(site, 'utf8')
    .replace('../data-demo', join(root, 'data-demo'))
    .replace('inSeries: 2', 'inSeries: 4')
    .replace(/^variants:\n(?:[ #].*\n|\n)+/m, '');
  writeFileSync(risky, text);
  const cold = run('check', risky);
  expect(cold.status).toBe(1);
  expect(cold.stdout).toMatch(/STOP garden pole: open-circuit voltage of 4 in series/);
});

test('wrong input is exit code 2 with line and column, and no stack', () => {
  const wrong = join(folder, 'wrong.yaml');
  writeFileSync(wrong, readFileSync(site, 'utf8').replace('height: 4 m', 'height: 4'));
  const { status, stdout, stderr } = run('year', wrong);
  expect(status).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).toMatch(/wrong\.yaml:\d+:\d+: arrays\[0\]\.height: 4 has no unit; write 4 m or/);
  expect(stderr).not.toMatch(/\n {4}at /);
  for (const args of [
    ['year', 'nowhere.yaml'],
    ['year'],
    ['yaer', site],
    ['year', site, '--units', 'imperial'],
    ['weather', site],
  ]) {
    const result = run(...args);
    expect(result.status, args.join(' ')).toBe(2);
    expect(result.stderr, args.join(' ')).not.toMatch(/\n {4}at /);
    expect(result.stderr.length).toBeGreaterThan(10);
  }
});

test('weather --make turns twelve means into a year that runs like the means themselves', () => {
  const means = join(folder, 'means.yaml');
  const months = (values: number[], unit: string) => `[${values.map((value) => `${value} ${unit}`).join(', ')}]`;
  const irradiation = [1.3, 2.4, 3.8, 4.9, 5.7, 6.1, 6.2, 5.2, 3.8, 2.3, 1.3, 1.0];
  const air = [-12, -9, -3, 5, 12, 17, 19, 18, 13, 6, -2, -9];
  const weather = `weather: { months: { irradiation: ${months(irradiation, 'kWh/m2')}, air: ${months(air, 'degC')} } }`;
  const text = readFileSync(site, 'utf8').replace(/^weather: .*$/m, weather);
  writeFileSync(means, text);
  const table = join(folder, 'made.csv');
  const made = run('weather', means, '--make', '--table', table);
  expect(made.stderr).toBe('');
  expect(made.status).toBe(0);
  const fromTable = join(folder, 'from-table.yaml');
  writeFileSync(fromTable, text.replace(/^weather: .*$/m, 'weather: made.csv'));
  const figures = (file: string): Contract => JSON.parse(run('year', file, ...own, '--json').stdout);
  expect(figures(fromTable).generator.hours).toBeCloseTo(figures(means).generator.hours, 6);
  // January's mean is met: 31 days of 1.3 kWh/m2.
  expect(made.stdout).toMatch(/^Jan +40 /m);
  expect(run('weather', site, '--make').stderr).toMatch(/weather is a file, not monthly means/);
});

test('a reader that stops reading is no fault', () => {
  const command = `"${process.execPath}" "${program}" year "${site}" --years 1 --json | head -1; echo "\${PIPESTATUS[0]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', command], { encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(stdout).toBe('{\n0\n');
});

test('files that a run reads are never written over', () => {
  const place = join(folder, 'guarded');
  run('start', place);
  const weather = join(place, 'kettle-pond.csv');
  const before = readFileSync(weather, 'utf8');
  for (const options of [
    ['--csv', weather],
    ['--html', join(place, 'site.yaml')],
  ]) {
    const { status, stderr } = run('year', join(place, 'site.yaml'), ...options);
    expect(status).toBe(2);
    expect(stderr).toMatch(/is one of the files this run reads/);
  }
  expect(readFileSync(weather, 'utf8')).toBe(before);
});
