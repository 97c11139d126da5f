import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { appendFileSync, copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { readCosts } from '@wintergap/seasonal';
import { changedDesign, loadSite } from '@wintergap/site';
import {
  BestDesigns,
  commonBest,
  commonYears,
  planSweep,
  runSweep,
  type SweepRow,
  sweepResults,
  wholeSweep,
} from '@wintergap/study';
import { exceededLimits, simulateSite, simulateWeather, siteLimits } from '@wintergap/year';
import Papa from 'papaparse';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { program } from './built-program.js';

const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'sweep-'));
afterAll(() => rmSync(folder, { recursive: true }));
const inFolder = (name: string) => join(folder, name);

const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8')
  .replace(/^sweep:\n([ #].*\n)+/m, '')
  .replace(/^weather: .*$/m, 'weather: kettle-pond.csv');
copyFileSync(join(root, 'data-demo/kettle-pond.csv'), inFolder('kettle-pond.csv'));

/** Writes the example with a sweep section; gives its path. */
function siteWith(name: string, section: string): string {
  writeFileSync(inFolder(name), `${example}\n${section}`);
  return inFolder(name);
}

// An engine that starts below 45 % cannot stop above 40 %: those designs become rows with an error.
const section = `sweep:
  designs: { generator.stop.above: [70 %, 80 %, 40 %], bank.capacity: 600..900/300 Ah, arrays.0.strings: 2..3, generator.start.below: [30 %, 45 %] }
`;
const designs = 24;
const site = siteWith('site.yaml', section);

test('a row of a sweep is what a run of that design alone gives, to the last bit', async () => {
  const file = loadSite(site);
  const rows: SweepRow[] = [];
  await runSweep(planSweep(file, wholeSweep), 0, 1, (some) => rows.push(...some));
  expect(rows.map(({ number }) => number)).toEqual(Array.from({ length: designs }, (_, i) => i + 1));
  let failed = 0;
  for (const { values, results, error } of rows) {
    const [strings, above, capacity, below] = values;
    const changes = {
      'generator.start.below': below,
      'generator.stop.above': above,
      'bank.capacity': capacity,
      'arrays.0.strings': strings,
    };
    if (results === null) {
      failed++;
      expect(() => changedDesign(file, changes)).toThrow();
      expect(error).toMatch(/^generator\.stop\.above: found 40 %, expected more than the 45 %/);
    } else {
      expect(results).toEqual(sweepResults(simulateSite(changedDesign(file, changes)), readCosts(file)));
    }
  }
  expect(failed).toBe(4);
});

/** A test of the built program; it starts it several times over. */
const ofProgram = (title: string, body: () => void | Promise<void>) => test(title, { timeout: 180_000 }, body);

const run = (...args: string[]) =>
  // What the best do over common years has a test of its own.
  execFileSync(process.execPath, [program, 'sweep', '--best-years', '1', ...args], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
const bytes = (name: string) => readFileSync(inFolder(name));
/** Lines before the rows, and the empty one behind the last end. */
const linesBeside = (name: string) => (name.endsWith('.csv') ? 3 : 2);
const rowsIn = (name: string) =>
  existsSync(inFolder(name))
    ? Math.max(readFileSync(inFolder(name), 'utf8').split('\n').length - linesBeside(name), 0)
    : 0;

beforeAll(() => {
  run(site, '--workers', '1', '--out', inFolder('reference.csv'));
}, 60_000);

ofProgram('any number of workers writes the same bytes', () => {
  expect(rowsIn('reference.csv')).toBe(designs);
  const page = run(site, '--workers', '3', '--out', inFolder('three.csv'));
  expect(bytes('three.csv').equals(bytes('reference.csv'))).toBe(true);
  expect(page).toMatch(/^Kettle Pond honey house: of 24 designs, number \d+ runs the engine least/);
  expect(page).toContain('4 designs could not be run');
  // All is there already: the same page, nothing run again.
  expect(run(site, '--workers', '3', '--out', inFolder('three.csv'))).toBe(page);
});

ofProgram(`parts join to the bytes of one run`, () => {
  const parts = [1, 2, 3].map((index) => {
    const part = inFolder(`part-${index}.csv`);
    run(site, '--workers', String(index), '--part', `${index}/3`, '--out', part);
    return part;
  });
  run('--join', inFolder('joined.csv'), ...parts.toReversed());
  expect(bytes('joined.csv').equals(bytes('reference.csv'))).toBe(true);
  const wrong = spawnSync(process.execPath, [program, 'sweep', '--join', inFolder('two.csv'), parts[0]!, parts[2]!], {
    encoding: 'utf8',
  });
  expect(wrong.status).toBe(2);
  expect(wrong.stderr).toBe('designs 9 to 16 of the sweep are missing: no part holds them\n');
});

ofProgram(`a seeded sample gives the rows of the full grid, in either format`, () => {
  const sampled = siteWith('sampled.yaml', `${section}  sample: { count: 7, seed: 4 }\n`);
  run(sampled, '--workers', '2', '--out', inFolder('sampled.csv'));
  const full = readFileSync(inFolder('reference.csv'), 'utf8').split('\n');
  const rows = readFileSync(inFolder('sampled.csv'), 'utf8').trimEnd().split('\n').slice(2);
  expect(new Set(rows).size).toBe(7);
  for (const row of rows) expect(full).toContain(row);
  run(sampled, '--workers', '1', '--out', inFolder('sampled.ndjson'));
  const objects = readFileSync(inFolder('sampled.ndjson'), 'utf8').trimEnd().split('\n').slice(1);
  for (const [i, text] of objects.entries()) {
    const { number, generatorHours = '' } = JSON.parse(text);
    expect(rows[i]!.startsWith(`${number},`)).toBe(true);
    expect(rows[i]).toContain(`,${generatorHours},`);
  }
});

/** Kills the program, as nothing can be prepared for, when its file has reached some rows. */
async function killedAt(name: string, rows: number, workers: string): Promise<void> {
  const child: ChildProcess = spawn(
    process.execPath,
    [program, 'sweep', site, '--workers', workers, '--out', inFolder(name)],
    { stdio: 'ignore' },
  );
  const ended = new Promise((done) => child.once('exit', done));
  while (rowsIn(name) < rows && child.exitCode === null) await wait(2);
  child.kill('SIGKILL');
  await ended;
}

for (const format of ['csv', 'ndjson']) {
  ofProgram(`a ${format} sweep killed twice in its midst goes on without losing or repeating a design`, async () => {
    const [whole, killed] = [`reference.${format}`, `killed.${format}`];
    if (format === 'ndjson') run(site, '--workers', '1', '--out', inFolder(whole));
    await killedAt(killed, 1, '2');
    const after = rowsIn(killed);
    expect(after).toBeGreaterThan(0);
    expect(after).toBeLessThan(designs);
    // What a kill in the midst of writing leaves behind.
    appendFileSync(inFolder(killed), bytes(whole).subarray(-40, -9));
    await killedAt(killed, after + 1, '1');
    expect(rowsIn(killed)).toBeGreaterThan(after);
    run(site, '--workers', '2', '--out', inFolder(killed));
    expect(bytes(killed).equals(bytes(whole))).toBe(true);
  });
}

ofProgram('means over common years are columns when asked for, the same bytes for any workers', () => {
  const small = siteWith(
    'years.yaml',
    'sweep: { designs: { bank.capacity: [600 Ah, 1000 Ah], arrays.0.strings: 2..3 } }\n',
  );
  const years = ['--years', '2', '--seed', '5'];
  run(small, ...years, '--workers', '1', '--out', inFolder('years-1.csv'));
  run(small, ...years, '--workers', '2', '--out', inFolder('years-2.csv'));
  expect(bytes('years-1.csv').equals(bytes('years-2.csv'))).toBe(true);
  const lines = readFileSync(inFolder('years-1.csv'), 'utf8').split('\n').slice(1, 4);
  const [first] = Papa.parse<Record<string, string>>(lines.join('\n'), { header: true }).data;
  const file = loadSite(small);
  const design = changedDesign(file, { 'arrays.0.strings': 2, 'bank.capacity': '600 Ah' });
  const { weatherOf } = commonYears(design, { years: 2, seed: 5 });
  const [one, other] = [0, 1].map((i) => simulateWeather(design, weatherOf(i)).summary.generator.hours);
  expect(Number(first!.generatorHoursMean)).toBeCloseTo((one! + other!) / 2, 9);
  expect(Number(first!.generatorHoursError)).toBeCloseTo(Math.abs(one! - other!) / 2, 9);
  const seed = spawnSync(
    process.execPath,
    [program, 'sweep', small, '--years', '2', '--out', inFolder('years-1.csv')],
    {
      encoding: 'utf8',
    },
  );
  expect(seed.status).toBe(2);
  expect(seed.stderr).toContain('holds a sweep of other designs');
});

test('the best over common years are a tie where chance does not tell them apart', async () => {
  const file = loadSite(siteWith('tie.yaml', 'sweep: { designs: { arrays.0.cable.length: [25 m, 25.1 m, 400 m] } }\n'));
  const plan = planSweep(file, wholeSweep);
  const best = new BestDesigns();
  await runSweep(plan, 0, 1, (rows) => {
    for (const row of rows) best.add(row);
  });
  const common = await commonBest(file, plan.axes, best.summary(), { years: 3, workers: 1 });
  expect(common!.leaders).toEqual(['1', '2']);
  expect(common!.weather).toMatchObject({ count: 3 });
  // The base design has the cable of the first, and the same years.
  expect(common!.base.hoursOfYears).toEqual(common!.designs[0]!.hoursOfYears);
  expect(common!.designs.map(({ name }) => name)).not.toContain('base');
});

test('designs over a limit carry its code, and are never among the best', async () => {
  const file = loadSite(siteWith('limits.yaml', 'sweep: { designs: { arrays.0.inSeries: [2, 40] } }\n'));
  const best = new BestDesigns();
  const rows: SweepRow[] = [];
  await runSweep(planSweep(file, wholeSweep), 0, 1, (some) => rows.push(...some));
  for (const row of rows) best.add(row);
  expect(rows[0]!.limits).toEqual([]);
  const codes = exceededLimits(siteLimits(changedDesign(file, { 'arrays.0.inSeries': 40 }))).map(({ code }) => code);
  expect(codes.length).toBeGreaterThan(0);
  expect(rows[1]!.limits).toEqual(codes);
  const { best: lists, front, overLimits } = best.summary();
  expect(overLimits).toBe(1);
  for (const list of Object.values(lists)) expect(list.map(({ number }) => number)).toEqual([1]);
  expect(front.map(({ row }) => row.number)).toEqual([1]);
});

test('more parts than designs are refused', () => {
  expect(() => planSweep(loadSite(site), { index: 1, of: 999_999_999 })).toThrow(
    /found 24 designs for 999999999 parts, expected at most as many parts as designs/,
  );
});

ofProgram(`a file of other settings is not continued, a wrong section not run`, () => {
  const changed = siteWith('changed.yaml', section.replace('30 %', '35 %'));
  copyFileSync(inFolder('reference.csv'), inFolder('kept.csv'));
  const other = spawnSync(process.execPath, [program, 'sweep', changed, '--out', inFolder('kept.csv')], {
    encoding: 'utf8',
  });
  expect([other.status, other.stdout]).toEqual([2, '']);
  expect(other.stderr).toContain('kept.csv: holds a sweep of other designs, weather or program version');
  expect(bytes('kept.csv').equals(bytes('reference.csv'))).toBe(true);
  const wrong = siteWith('wrong.yaml', 'sweep: { designs: { bank.capacity: [500 Ah, 800 m] } }\n');
  const refused = spawnSync(process.execPath, [program, 'sweep', wrong], { encoding: 'utf8' });
  expect(refused.status).toBe(2);
  expect(refused.stderr).toMatch(/wrong\.yaml:\d+:45: sweep\.designs\.bank\.capacity: /);
});

const version = spawnSync('parallel', ['--version'], { encoding: 'utf8' }).stdout ?? '';
const hasParallel = version.startsWith('GNU parallel');
const whyNot = hasParallel ? '' : ' (skipped: GNU parallel is not installed)';

test.skipIf(!hasParallel)(`GNU parallel runs the parts, an unfinished one again${whyNot}`, async () => {
  // One part is there in part, as a machine that failed would leave it.
  const lines = existsSync(inFolder('part-2.csv')) ? readFileSync(inFolder('part-2.csv'), 'utf8').split('\n') : [];
  writeFileSync(inFolder('spread-2.csv'), lines.slice(0, 6).join('\n').slice(0, -5));
  const command = `${process.execPath} ${program} sweep site.yaml --workers 1 --part {}/3 --out spread-{}.csv`;
  execFileSync(
    'parallel',
    [
      '--will-cite',
      '--jobs',
      String(Math.min(3, availableParallelism())),
      '--halt',
      'soon,fail=1',
      command,
      ':::',
      '1',
      '2',
      '3',
    ],
    { cwd: folder, stdio: 'ignore' },
  );
  run('--join', inFolder('spread.csv'), ...[1, 2, 3].map((index) => inFolder(`spread-${index}.csv`)));
  expect(bytes('spread.csv').equals(bytes('reference.csv'))).toBe(true);
});
