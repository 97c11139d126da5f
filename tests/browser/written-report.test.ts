import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { program } from '../built-program.js';

const root = join(import.meta.dirname, '..', '..');
const bundle = join(root, 'packages/cli/bundle');
const site = join(root, 'examples/kettle-pond.yaml');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-html-'));

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...args: string[]) {
  return spawnSync(process.execPath, [program, ...args], { encoding: 'utf8', cwd: folder });
}

test.each(['year', 'compare'])('%s --html writes the whole page and still prints its answer', (command) => {
  const file = join(folder, `${command}.html`);
  // Few years: an answer that takes ten seconds tells on stderr how far it has come.
  const { status, stdout, stderr } = run(command, site, '--years', '3', '--html', file);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Kettle Pond honey house/);
  const page = readFileSync(file, 'utf8');
  expect(page.startsWith('<!doctype html>')).toBe(true);
  expect(page.endsWith('</html>\n')).toBe(true);
  // The same sentences on the page and in the terminal.
  const answer = stdout.slice(0, stdout.indexOf('\n\n')).replace(/\n/g, ' ').replaceAll('"', '&quot;');
  expect(page.replaceAll('\u00a0', ' ')).toContain(answer);
});

test('a report of a variant names it', () => {
  const file = join(folder, 'fixed.html');
  expect(run('year', site, '--variant', 'fixed', '--html', file, '--units', 'us').status).toBe(0);
  const page = readFileSync(file, 'utf8');
  expect(page).toContain('<h1>Kettle Pond honey house, fixed</h1>');
  expect(page).not.toContain('degC');
});

test('a place that cannot be written is said in one line, and nothing half-written stays', () => {
  // A folder stands where the file should go.
  mkdirSync(join(folder, 'report.html'));
  const { status, stderr } = run('year', site, '--html', join(folder, 'report.html'));
  expect(status).toBe(2);
  expect(stderr).toMatch(/report\.html: cannot be written/);
  expect(readdirSync(folder).filter((name) => name.includes('partial'))).toEqual([]);
});

test('the libraries of the charts are not loaded where no report is asked for', () => {
  const chartLibrary = /linkedom|observablehq/;
  const year = readdirSync(bundle).find((file) => /^year-.*\.js$/.test(file));
  const toLoad = ['main.js', year!];
  for (const file of toLoad) {
    const code = readFileSync(join(bundle, file), 'utf8');
    expect(chartLibrary.test(code), `${file} holds the charts' libraries`).toBe(false);
    for (const [, chunk] of code.matchAll(/\bfrom ?"\.\/([^"]+)"/g)) {
      if (!toLoad.includes(chunk!)) toLoad.push(chunk!);
    }
  }
  expect(toLoad.length).toBeGreaterThan(4);
  const reports = readdirSync(bundle).filter((file) => file.startsWith('report-'));
  expect(reports.some((file) => chartLibrary.test(readFileSync(join(bundle, file), 'utf8')))).toBe(true);
});
