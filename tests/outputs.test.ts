import { execFileSync, spawn, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { program } from './built-program.js';

const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-outputs-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder with a copy of the honey house and its weather. */
function place(name: string): string {
  const own = join(folder, name);
  mkdirSync(join(own, 'data-demo'), { recursive: true });
  mkdirSync(join(own, 'examples'));
  copyFileSync(join(root, 'examples/kettle-pond.yaml'), join(own, 'examples/site.yaml'));
  copyFileSync(join(root, 'data-demo/kettle-pond.csv'), join(own, 'data-demo/kettle-pond.csv'));
  return own;
}

const run = (cwd: string, ...args: string[]) =>
  spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd, timeout: 60_000 });
const site = 'examples/site.yaml';
const weather = 'data-demo/kettle-pond.csv';

test('a table of weather is not written over the weather of the site it was read by', () => {
  const own = place('weather-of-site');
  const before = readFileSync(join(own, weather), 'utf8');
  const { status, stderr } = run(own, 'weather', site, '--site', '--table', weather);
  expect(status).toBe(2);
  expect(stderr).toContain('is one of the files this run reads');
  expect(readFileSync(join(own, weather), 'utf8')).toBe(before);
});

test('an answer of no stays one when nobody reads it to the end, and wrong input when nobody reads the message', () => {
  const own = place('closed-pipe');
  const text = readFileSync(join(own, site), 'utf8');
  writeFileSync(join(own, site), text.replace('maxVoltage: 150 V', 'maxVoltage: 50 V'));
  const script = (command: string) =>
    spawnSync('bash', ['-c', `${process.execPath} ${program} ${command}; exit \${PIPESTATUS[0]}`], { cwd: own }).status;
  expect(script(`check ${site} | true`)).toBe(1);
  expect(script('no-such-command 2>&-')).toBe(2);
});

test('two answers at once are refused and none is dropped in silence', () => {
  const own = place('two-answers');
  for (const two of [
    ['--day', '12-21', '--json'],
    ['--worst', '--losses'],
    ['--worst', '--day', '12-21'],
  ]) {
    const { status, stdout, stderr } = run(own, 'year', site, '--years', '1', ...two);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toContain('expected one of them');
  }
});

test('wrong units are told before a sweep is run', () => {
  const own = place('sweep-units');
  const { status, stderr } = run(own, 'sweep', site, '--units', 'imperial', '--out', 'rows.csv');
  expect(status).toBe(2);
  expect(stderr).toContain('imperial');
  expect(existsSync(join(own, 'rows.csv'))).toBe(false);
});

test('no name leads to a file that is read: neither a symbolic nor a hard link', () => {
  const own = place('links');
  symlinkSync(join(own, site), join(own, 'site-link.csv'));
  symlinkSync('data-demo', join(own, 'folder-link'));
  linkSync(join(own, weather), join(own, 'hard-link.csv'));
  const before = [site, weather].map((file) => readFileSync(join(own, file), 'utf8'));
  for (const out of ['site-link.csv', 'folder-link/kettle-pond.csv', 'hard-link.csv']) {
    const { status, stderr } = run(own, 'year', site, '--csv', out);
    expect([status, stderr]).toEqual([2, expect.stringContaining('is one of the files this run reads')]);
  }
  expect([site, weather].map((file) => readFileSync(join(own, file), 'utf8'))).toEqual(before);
});

test('through a link the file it leads to is replaced, and the link stays', () => {
  const own = place('through');
  copyFileSync(join(own, site), join(own, 'old.csv'));
  symlinkSync('old.csv', join(own, 'link.csv'));
  expect(run(own, 'year', site, '--years', '1', '--csv', 'link.csv').status).toBe(0);
  expect(readlinkSync(join(own, 'link.csv'))).toBe('old.csv');
  expect(readFileSync(join(own, 'old.csv'), 'utf8').split('\n').length).toBeGreaterThan(8760);
});

test('two outputs in one file are refused before anything is run', () => {
  const own = place('two');
  symlinkSync('one.csv', join(own, 'other.html'));
  const same = run(own, 'year', site, '--csv', 'one.csv', '--html', './one.csv');
  expect([same.status, same.stderr]).toEqual([2, expect.stringMatching(/--csv and --html both name/)]);
  expect(existsSync(join(own, 'one.csv'))).toBe(false);
});

test('a pipe gets the content and stays a pipe', async () => {
  const own = place('pipe');
  execFileSync('mkfifo', [join(own, 'pipe')]);
  const reader = spawn('cat', [join(own, 'pipe')], { stdio: ['ignore', 'pipe', 'ignore'] });
  let text = '';
  reader.stdout.on('data', (data) => {
    text += data;
  });
  const ended = new Promise((resolve) => reader.on('close', resolve));
  const writer = spawn(process.execPath, [program, 'year', site, '--years', '1', '--csv', 'pipe'], {
    cwd: own,
    stdio: 'ignore',
  });
  expect(await new Promise((resolve) => writer.on('close', resolve))).toBe(0);
  await ended;
  expect(text.split('\n').length).toBeGreaterThan(8760);
  expect(lstatSync(join(own, 'pipe')).isFIFO()).toBe(true);
});

test('/dev/stdout takes the ledger, into a pipe as into a file', () => {
  const own = place('stdout');
  for (const to of ['| cat', '> all.txt && cat all.txt']) {
    const command = `"${process.execPath}" "${program}" year ${site} --years 1 --csv /dev/stdout --quiet ${to}`;
    const { status, stdout } = spawnSync('sh', ['-c', command], { encoding: 'utf8', cwd: own, maxBuffer: 1e8 });
    expect(status).toBe(0);
    expect(stdout).toContain('Kettle Pond honey house: the generator runs');
    expect(stdout.split('\n').length).toBeGreaterThan(8760);
  }
});

test('a standard output that is full is exit code 3 in one line, without a trace', () => {
  const own = place('full');
  const { status, stderr } = spawnSync(
    'sh',
    ['-c', `"${process.execPath}" "${program}" year ${site} --years 1 > /dev/full`],
    {
      encoding: 'utf8',
      cwd: own,
    },
  );
  expect(status).toBe(3);
  expect(stderr).toMatch(/^the results cannot be written to the standard output: .*ENOSPC.*\n$/);
});

test('a second sweep on a file is told who holds it; a killed one leaves no lock behind', async () => {
  const own = place('sweep');
  const many = readFileSync(join(own, site), 'utf8').replace(
    'bank.capacity: [600 Ah, 1000 Ah, 1400 Ah] }\n\n#',
    'bank.capacity: 600..1000/10 Ah }\n\n#',
  );
  writeFileSync(join(own, site), many);
  const args = [program, 'sweep', site, '--out', 'rows.csv', '--workers', '1', '--best-years', '1'];
  const first = spawn(process.execPath, args, { cwd: own, stdio: 'ignore' });
  while (!existsSync(join(own, 'rows.csv.lock-holder')) && first.exitCode === null)
    await new Promise((resolve) => setTimeout(resolve, 20));
  const second = run(own, ...args.slice(1));
  expect([second.status, second.stderr]).toEqual([
    2,
    expect.stringMatching(new RegExp(`rows\\.csv: process ${first.pid} on .* has been writing it since`)),
  ]);
  const closed = new Promise((resolve) => first.on('close', resolve));
  first.kill('SIGKILL');
  await closed;
  expect(run(own, ...args.slice(1)).status).toBe(0);
  // 164 designs behind a comment and the names of the columns.
  expect(readFileSync(join(own, 'rows.csv'), 'utf8').trimEnd().split('\n')).toHaveLength(166);
  expect(readdirSync(own).filter((name) => name.includes('lock'))).toEqual([]);
});
