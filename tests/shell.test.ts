import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { createProgram } from '../packages/cli/src/program.js';
import { program } from './built-program.js';

const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-shell-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// The program as an installed command, and a site whose names have spaces and quotes in them.
symlinkSync(program, join(folder, 'wintergap'));
const site = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
writeFileSync(join(folder, 'site.yaml'), site.replace(/^ {2}taller pole:/m, '  "the neighbour\'s pole":'));
const env = { ...process.env, PATH: `${folder}:${process.env.PATH}` };

function run(command: string, ...args: string[]) {
  return spawnSync(command, args, { cwd: folder, env, encoding: 'utf8' });
}
writeFileSync(join(folder, 'completion.bash'), run('wintergap', 'completion', 'bash').stdout);
const is = (shell: string) => run(shell, '-c', 'exit 0').status === 0;

/** What bash would put in the place of the last word. */
function completedInBash(...words: string[]): string[] {
  const line = words.map((word) => `'${word.replaceAll("'", `'\\''`)}'`).join(' ');
  const { stdout, stderr } = run(
    'bash',
    '-c',
    `source completion.bash; COMP_WORDS=(wintergap ${line}); COMP_CWORD=${words.length}
     _wintergap; printf '%s\\n' "\${COMPREPLY[@]}"`,
  );
  expect(stderr).toBe('');
  return stdout.split('\n').filter((word) => word !== '');
}

test('bash completes commands, options, variants and arrays, with names as it must write them', () => {
  expect(completedInBash('we')).toEqual(['weigh', 'weather']);
  expect(completedInBash('year', 'site.yaml', '--lo')).toEqual(['--losses']);
  expect(completedInBash('year', 'site.yaml', '--variant', 'the')).toEqual(["the\\ neighbour\\'s\\ pole"]);
  expect(completedInBash('tilt', '--array', 'gar')).toEqual([]);
  expect(completedInBash('tilt', 'site.yaml', '--array', '"gar')).toEqual(['garden\\ pole']);
  expect(completedInBash('carry', 'site.yaml', '--units', '')).toEqual(['metric', 'us']);
  // Nothing of ours stands where a file does: bash then offers files.
  expect(completedInBash('year', '')).toEqual([]);
});

test.skipIf(!is('zsh'))('zsh describes what it completes', () => {
  const script = `autoload -Uz compinit && compinit -u -D; eval "$(wintergap completion zsh)"
    _describe() { print -rl -- "\${(@P)2}" }; _files() { print files }
    words=(wintergap year site.yaml --variant ''); CURRENT=5; _wintergap
    words=(wintergap year ''); CURRENT=3; _wintergap; words=(wintergap ti); CURRENT=2; _wintergap`;
  const { stdout, stderr } = run('zsh', '-f', '-c', script);
  expect(stderr).toBe('');
  expect(stdout).toMatch(/^the neighbour's pole:$/m);
  expect(stdout).toMatch(/^files$/m);
  expect(stdout).toMatch(/^tilt:the best tilts, with dates$/m);
});

test.skipIf(!is('fish'))('fish completes with descriptions, and files where a file stands', () => {
  const script = `wintergap completion fish | source
    complete -C 'wintergap year site.yaml --variant '; complete -C 'wintergap year si'; complete -C 'wintergap ti'`;
  const { stdout, stderr } = run('fish', '--no-config', '-c', script);
  expect(stderr).toBe('');
  expect(stdout).toMatch(/^the neighbour's pole$/m);
  expect(stdout).toMatch(/^site\.yaml/m);
  expect(stdout).toMatch(/^tilt\tthe best tilts, with dates$/m);
});

test('the help of the program fills less than half a screen, with every command and an example', () => {
  const { stdout } = run('wintergap', '--help');
  const lines = stdout.trimEnd().split('\n');
  expect(lines.length).toBeLessThanOrEqual(12);
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  const names = createProgram().commands.map((command) => command.name());
  for (const name of names.filter((one) => one !== 'complete')) expect(stdout).toMatch(new RegExp(` ${name} `));
  expect(stdout).toMatch(/^Example: wintergap start/m);
});

const asked = createProgram().commands.filter((command) => command.name() !== 'complete');

test.each(asked.map((command) => [command.name(), command] as const))(
  'the help of %s fills no more than 24 lines of a terminal, with every option and an example',
  (name, command) => {
    const { status, stdout } = run('wintergap', name, '--help');
    expect(status).toBe(0);
    const lines = stdout.trimEnd().split('\n');
    expect(lines.length).toBeLessThanOrEqual(24);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
    for (const { flags } of command.options) expect(stdout).toContain(`\n  ${flags} `);
    expect(stdout).toMatch(new RegExp(`^Examples?[,:].*\\swintergap ${name} |"\\$\\(wintergap ${name} `, 'ms'));
  },
);

test('a misspelled command, option or variant is answered with the one that was meant', () => {
  expect(run('wintergap', 'yaer', 'site.yaml').stderr).toMatch(/Did you mean year\?/);
  expect(run('wintergap', 'year', 'site.yaml', '--vairant', 'x').stderr).toMatch(/Did you mean --variant\?/);
  expect(run('wintergap', 'year', 'site.yaml', '--variant', 'fixd').stderr).toMatch(/did you mean "fixed"\?/);
  expect(run('wintergap', 'completion', 'bsh').stderr).toMatch(/bash, zsh, fish/);
});

test('the manual page names every command and option, and is read without complaint', () => {
  const page = readFileSync(join(root, 'packages/cli/bundle/wintergap.1'), 'utf8');
  const plain = page.replaceAll('\\-', '-').replaceAll('\\&', '');
  for (const command of createProgram().commands) {
    if (command.name() === 'complete') continue;
    expect(plain).toMatch(new RegExp(`^\\.SS ${command.name()} `, 'm'));
    for (const { long } of command.options) expect(plain).toMatch(new RegExp(`^\\.B .*${long}\\b`, 'm'));
  }
  const groff = spawnSync('groff', ['-man', '-ww', '-Tutf8', '-P-cbou'], { input: page, encoding: 'utf8' });
  if (groff.error === undefined) {
    expect(groff.stderr).toBe('');
    expect(groff.stdout).toMatch(/EXIT STATUS/);
  }
});
