// Changes the sources of a room one operator at a time and asks whether its tests notice:
//   npm run mutate -- tally                    every file of a room
//   npm run mutate -- year 'loop/*.ts'         some files of it
//   npm run mutate -- tally --stopped          takes over what a run had found when it was stopped
//   npm run mutate -- year --slow              with the tests of whole years, after a quick run
//   npm run mutate                             writes RESULTS.md anew, runs nothing
// Results of the files that were run go to results.jsonl beside this file; RESULTS.md tells of all of them.
import { mkdirSync } from 'node:fs';
import { cpus, setPriority } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { keepResults, writePage } from './results.mjs';
import { rooms } from './rooms.mjs';

const here = import.meta.dirname;
const root = join(here, '../..');
const { values, positionals } = parseArgs({
  options: {
    threads: { type: 'string', default: '1' },
    slow: { type: 'boolean', default: false },
    stopped: { type: 'boolean', default: false },
  },
  allowPositionals: true,
});
const [room, ...files] = positionals;
if (room !== undefined && !(room in rooms)) {
  throw new Error(`there is no tested room "${room}"; there are ${Object.keys(rooms).join(', ')}`);
}

const found = join(here, '.work', `${room}.found.jsonl`);
if (room !== undefined && !values.stopped) {
  const source = `packages/${room}/src`;
  mkdirSync(join(here, '.work'), { recursive: true });
  process.chdir(root);
  process.env.MUTATION_ROOM = room;
  process.env.MUTATION_FOUND = found;
  process.env.MUTATION_SLOW = values.slow ? '1' : '0';
  // Tests run in a copy of the tree, from where `../shared` is somewhere else.
  process.env.WINTERGAP_SHARED ??= resolve(root, '../shared');
  // Other work on the machine goes first.
  setPriority(15);
  await new Stryker({
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutation/vitest.config.mjs', related: false },
    plugins: ['@stryker-mutator/vitest-runner', join(here, 'as-found.mjs')],
    mutate: [
      ...(files.length === 0 ? ['**/*.ts'] : files).map((glob) => `${source}/${glob}`),
      `!${source}/**/*.{test,bench,fixture}.ts`,
      `!${source}/**/index.ts`,
    ],
    // Words are not physics: a text that changed is left to those who read it.
    mutator: { excludedMutations: ['StringLiteral', 'Regex'] },
    coverageAnalysis: 'perTest',
    // What is worked out while a module loads would ask every test of the room. Banks are made so in their tests: there it must.
    ignoreStatic: room !== 'battery',
    concurrency: Math.min(Number(values.threads), cpus().length),
    timeoutMS: 10_000,
    timeoutFactor: 3,
    dryRunTimeoutMinutes: 20,
    incremental: true,
    incrementalFile: join(here, '.work', `${room}.incremental.json`),
    reporters: ['as-found', 'progress-append-only'],
    tempDirName: '.stryker-tmp',
    ignorePatterns: [
      '**/dist',
      '**/bundle',
      '**/*.tsbuildinfo',
      'docs/_site',
      'release',
      'tests/mutation/.work',
      '.ci',
    ],
    allowEmpty: false,
    allowConsoleColors: false,
    // The compiler here has no parser to call; configurations are right as they stand, for the copy is a whole tree.
    tsconfigFile: 'none',
    disableTypeChecks: false,
  }).runMutationTest();
}
if (room !== undefined) keepResults(found);
writePage();
