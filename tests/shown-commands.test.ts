import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { createProgram } from '../packages/cli/src/program.js';
import { program } from './built-program.js';

// What docs and READMEs tell people to type. docs/guide, which shows what is printed too, has a test of its own.
const root = join(import.meta.dirname, '..');
const pages = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
  (file) =>
    /^(README|DEVELOPERS|docs\/.*|(packages|tests|examples|bench)\/.*README)\.md$/.test(file) &&
    !/node_modules|_site|^docs\/(guide|api)\//.test(file),
);
const text = (file: string) => readFileSync(join(root, file), 'utf8');
const { scripts, version } = JSON.parse(text('package.json')) as { scripts: Record<string, string>; version: string };

/** The command lines of a page: those of its blocks, and those in its sentences. */
function commandsOf(page: string): string[] {
  const markdown = text(page);
  const blocks = [...markdown.matchAll(/```sh\n([\s\S]*?)```/g)].flatMap(([, block]) =>
    block!
      .replace(/\\\n\s*/g, '')
      .trim()
      .split('\n'),
  );
  const prose = markdown
    .replace(/```[\s\S]*?```/g, '')
    .replace(/\s+/g, ' ')
    .split('`');
  const named = prose.filter((code, i) => i % 2 === 1 && /^(wintergap \S+ \S|(npm|npx|node) \S)/.test(code));
  return [...blocks, ...named].flatMap((line) => line.replace(/ +# .*$/, '').split(' && '));
}

const shown = [...new Set(pages.flatMap(commandsOf))].sort();
const ours = /^(?:node_modules\/\.bin\/)?wintergap /;

/** What other tests run, since it needs more than a folder. */
const heldElsewhere: Record<string, string> = {
  'tests/sweep.test.ts': 'parallel',
  'tests/installed/run.mjs': 'wintergap.mjs',
};
const isHeldElsewhere = (line: string): boolean =>
  /\bparallel\b|--join|^npx wintergap|^node wintergap\.mjs|^npm install/.test(line);

const folder = mkdtempSync(join(tmpdir(), 'wintergap-shown-'));
afterAll(() => rmSync(folder, { recursive: true }));
for (const part of ['examples', 'data-demo']) cpSync(join(root, part), join(folder, part), { recursive: true });
writeFileSync(join(folder, 'ridge.csv'), text('data-demo/kettle-pond.csv').replace(/^# kind.*\n/m, ''));
writeFileSync(
  join(folder, 'site.yaml'),
  text('examples/kettle-pond.yaml').replace(/^weather: .*$/m, 'weather: ridge.csv'),
);

/** The words that a reader puts his own in place of. */
const filledIn = (line: string): string[] =>
  line
    .replace(ours, '')
    .replace(/^(weather) FILE/, '$1 ridge.csv')
    .replace(/\b(SITE|FILE)\b/, 'site.yaml')
    .replace('COMMAND', 'year')
    .replace('NAME', 'fixed')
    .split(' ');

const toRun = shown.filter((line) => ours.test(line) && !isHeldElsewhere(line) && !/ live /.test(line));

test('the commands are found', () => {
  expect(toRun.length).toBeGreaterThan(10);
  expect(shown).toContain('npm ci');
  for (const [file, word] of Object.entries(heldElsewhere)) expect(text(file)).toContain(word);
});

function runs(line: string): void {
  const words = filledIn(line);
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...words], {
    encoding: 'utf8',
    cwd: folder,
  });
  expect(status, stderr).toBe(0);
  expect(stdout).not.toBe('');
}

test.each(toRun)('%s runs', runs);

test.each(shown.filter((line) => / live /.test(line)))('%s prints an address and ends with Ctrl-C', async (line) => {
  const live = spawn(process.execPath, [program, ...filledIn(line)], { cwd: folder });
  const ended = once(live, 'exit');
  const [first] = (await once(live.stdout, 'data')) as [Buffer];
  expect(String(first)).toMatch(/http:\/\/127\.0\.0\.1:\d+\/[\w-]+\//);
  live.kill('SIGINT');
  expect(await ended).toEqual([null, 'SIGINT']);
});

test.each(shown.filter((line) => !ours.test(line) && !isHeldElsewhere(line)))('%s is there to be run', (line) => {
  const [command, first, ...rest] = line.split(' ');
  if (command === 'npm' && first === 'run') expect(Object.keys(scripts)).toContain(rest[0]);
  else if (command === 'npm') expect(['ci', 'test', 'audit']).toContain(first);
  else if (command === 'npx') expect(existsSync(join(root, 'node_modules/.bin', first!))).toBe(true);
  else expect(command).toBe('node');
  const files = [first!, ...rest].filter((word) => /\.(mjs|ts)$/.test(word));
  for (const file of files) expect(existsSync(join(root, file)), file).toBe(true);
});

test('the tarball that the README installs is of this version', () => {
  expect(shown).toContain(`npm install ./wintergap-${version}.tgz`);
});

/** What the shells ask, not people. */
const hidden = 'complete';

test('each command in the table of the README is there, with the options it names', () => {
  const rows = [...text('README.md').matchAll(/^\| `(\w+) [A-Z]+` \| (.*) \|$/gm)];
  const commands = createProgram().commands.filter((one) => one.name() !== hidden);
  expect(rows.map(([, name]) => name).sort()).toEqual(commands.map((one) => one.name()).sort());
  for (const [, name, says] of rows) {
    const known = commands.find((one) => one.name() === name)!.options.map(({ long }) => long);
    for (const [, option] of says!.matchAll(/`(--[a-z-]+)[^`]*`/g)) expect(known, name).toContain(option);
  }
});
