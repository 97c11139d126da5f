// Writes docs/dependencies.md: what each library of others is for, what it weighs and what it costs at the start, what
// else there is, and the licences of all that the program holds. Run after the build, on a quiet machine:
//   node docs/dependencies.mjs
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { common, root, threadStart, withUnits, workers } from '../packages/cli/bundle-parts.mjs';
import { librariesIn } from '../packages/cli/third-party.mjs';

/** What each library that runs is for, when it is loaded, and what else would do. */
const running = {
  '@observablehq/plot': [
    'the charts of the HTML report and of the live page, as SVG; loaded when a page is drawn',
    'd3 by itself, which it stands on: the same size and far more code of ours',
  ],
  'cli-progress': [
    'the bar on stderr of runs that take long; loaded with them',
    'twenty lines for a bar without its edge cases',
  ],
  'cli-table3': ['aligned tables of the terminal pages', 'padding by hand, which breaks at wide letters'],
  commander: ['commands, options, help, suggestions for slips', '`parseArgs` of Node.js: no commands, no help'],
  'fastest-levenshtein': [
    'the nearest known word for a misspelled key, name or unit',
    'thirty lines; it has none to maintain',
  ],
  ics: [
    'the calendar file of tilts and weeks of fuel; loaded when one is written',
    'thirty lines of RFC 5545: folding, escaping and recurrence, and their edge cases',
  ],
  'js-quantities': [
    'units outside the table of common ones, such as BTU/(h degF); loaded when the first of them turns up',
    'a longer table: every compound of units would have to be listed',
  ],
  linkedom: [
    'the document that the charts are drawn on, where there is no browser; loaded when a page is drawn',
    'a browser, which a terminal has not; charts written as text, which would give up the chart library. Large, but only who draws a page waits for it',
  ],
  papaparse: [
    'tables of weather, loads and parts, and those for spreadsheets: quotes, separators, line ends',
    'split at commas, which real files defeat',
  ],
  piscina: [
    'a pool of threads for the years of an outlook and the designs of a sweep; loaded where threads pay',
    'worker threads by hand: queue, errors, ending',
  ],
  preact: [
    'what is seen of the live page, in the browser; the program never loads it, its page holds 12 kB of it',
    'the page by hand: every figure in two places',
  ],
  'proper-lockfile': [
    'one writer of a sweep file at a time; loaded by `sweep`',
    'a lock of our own, which the first crash leaves behind',
  ],
  'simple-statistics': ['quantiles, means, deviations of many years', 'formulas of our own, to be checked against it'],
  suncalc: [
    'where the sun is',
    'the full almanac, `astronomy-engine`, against which it is tested: many times the size',
  ],
  yaml: ['the site file, with line and column of every value', 'js-yaml, which does not keep the places'],
  zod: [
    'the schema of the site file: reading, ranges, messages, JSON Schema',
    'ajv, whose messages cannot say how to mend',
  ],
};

/** What is needed to build and test only; none of it is in what is installed. */
const building = {
  '@11ty/eleventy': 'the site of these docs from Markdown: small, links that work from disk',
  '@microsoft/api-extractor':
    'what each package exports, for `docs/api`; it brings the TypeScript that it calls (6.0.3), for the one used here can only be run',
  '@biomejs/biome': 'form of the code: one tool in place of two',
  '@stryker-mutator/core': 'changes the sources one operator at a time (`npm run mutate`); 10 needs Node.js 22',
  '@stryker-mutator/vitest-runner': 'tries those changes with the tests that run them',
  '@types/node': 'types of Node.js',
  '@types/papaparse': 'types of papaparse',
  '@types/proper-lockfile': 'types of proper-lockfile',
  'astronomy-engine': 'an independent almanac that the sun is tested against',
  'axe-core': 'what the pages would keep from people who do not see or point, as far as a program can tell',
  esbuild: 'puts the program and its threads into few files, or one, and the live page into two',
  'fast-check': 'property tests',
  highs: 'linear programmes: the least that any engine rule could do, against which the year is tested',
  'ical.js': 'reads the calendar back in its test',
  'playwright-core': 'the reports and the live page in a real browser',
  typescript: 'types, and the build of the packages',
  vitest: 'runs the tests',
  'yaml-language-server': 'the schema for editors, tried in the server that editors run',
};

/** What the reference of the library is made with, in a package of its own. */
const reference = {
  typedoc: 'the reference of the library, from types and doc comments',
  'typedoc-plugin-missing-exports': 'types that exports name without being exported, in that reference',
  typescript: 'the compiler that TypeDoc calls; nothing is built with it',
};

const manifest = (folder) => JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));

/** The folder of a library, seen from another. */
function folderOf(name, from) {
  for (let at = from; ; at = join(at, '..')) {
    const folder = join(at, 'node_modules', name);
    if (existsSync(join(folder, 'package.json'))) return folder;
    if (at === root) return null;
  }
}

/** A library and all that it needs. */
function withNeeds(folder, found = new Set()) {
  if (folder === null || found.has(folder)) return found;
  found.add(folder);
  for (const name of Object.keys(manifest(folder).dependencies ?? {})) withNeeds(folderOf(name, folder), found);
  return found;
}

const bytesOf = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter(
      (entry) => entry.isFile() && !join(entry.parentPath, entry.name).slice(folder.length).includes('node_modules'),
    )
    .reduce((sum, entry) => sum + statSync(join(entry.parentPath, entry.name)).size, 0);

/** What importing a module takes of a processor, ms: the least of several processes, which other work does not disturb. */
function importMs(name) {
  const code = `const began = process.cpuUsage(); await import('${name}');
    const { user, system } = process.cpuUsage(began); console.log((user + system) / 1000);`;
  const times = Array.from({ length: 7 }, () =>
    Number(execFileSync(process.execPath, ['--input-type=module', '-e', code], { cwd: root, encoding: 'utf8' })),
  );
  return Math.min(...times);
}

const { metafile } = await build({
  ...common,
  entryPoints: ['packages/cli/src/main.ts', threadStart, ...workers],
  outdir: join(root, 'packages/cli/bundle.measured'),
  splitting: true,
  write: false,
  metafile: true,
  plugins: [withUnits],
});
const inBundle = (folders) =>
  Object.values(metafile.outputs)
    .flatMap(({ inputs }) => Object.entries(inputs))
    .filter(([input]) => [...folders].some((folder) => join(root, input).startsWith(`${folder}/`)))
    .reduce((sum, [, { bytesInOutput }]) => sum + bytesInOutput, 0);

const rooms = readdirSync(join(root, 'packages')).map((name) => ({ name, ...manifest(join(root, 'packages', name)) }));
const usedBy = (library) =>
  rooms
    .filter(({ dependencies = {}, devDependencies = {} }) => library in { ...dependencies, ...devDependencies })
    .map(({ name }) => name.replace('@wintergap/', '').replace('wintergap', 'cli'))
    .join(', ');

const kB = (bytes) => `${Math.round(bytes / 1000)} kB`;
const rows = Object.entries(running).map(([name, [reason, other]]) => {
  const folder = folderOf(name, root);
  const needs = withNeeds(folder);
  const installed = [...needs].reduce((sum, one) => sum + bytesOf(one), 0);
  const start = Math.round(importMs(name));
  const { version } = manifest(folder);
  return `| \`${name}\` ${version} | ${usedBy(name)} | ${reason} | ${kB(installed)} | ${kB(inBundle(needs))} | ${start} ms | ${other} |`;
});

const buildingRow = ([name, reason], from) => `| \`${name}\` ${manifest(folderOf(name, from)).version} | ${reason} |`;

const licences = new Map();
for (const folder of librariesIn(metafile)) {
  const { name, version, license = 'BSD-2-Clause' } = manifest(join(root, folder));
  licences.set(license, [...(licences.get(license) ?? []), `${name} ${version}`]);
}

writeFileSync(
  join(root, 'docs/dependencies.md'),
  `# What is taken from others

Written by \`node docs/dependencies.mjs\`; sizes and times are measured. The physics and the ledger are ours; the rest is left to
well-kept libraries, each at one exact version. None of those that run has a script at its installation, and the program's own
package asks for none: what it needs of them is in its bundle.

## What runs

Size is what the library and all it needs take on disk; in the bundle, what is left of that in the program. Start is what
importing the whole library takes of a processor, least of seven times; the program takes less, for it holds only the parts it
uses, and what is loaded late costs nothing before.

| library | rooms | for | size | in the bundle | start | else |
| --- | --- | --- | --- | --- | --- | --- |
${rows.join('\n')}

## What builds and tests

| library | for |
| --- | --- |
${Object.entries(building)
  .map((row) => buildingRow(row, root))
  .join('\n')}
${Object.entries(reference)
  .map((row) => buildingRow(row, join(root, 'docs/reference')))
  .join('\n')}

## Considered and left out

- TypeDoc's Markdown for the site of the docs: its own pages have a search and open from disk as well.
- A library for shell completion: the shells ask the program itself (\`packages/cli/src/completion\`), which knows the site.
- A document of our own in place of \`linkedom\`: the chart library asks for much of one, and only pages wait for it.

\`npm audit\` asks the registry for known faults of these versions; the one that this was built with does not answer that
question (405), so it is to be asked where one does.

## Licences

Of all that the bundle holds, as its packages state them (suncalc: as its licence file does).
All allow use and passing on with their notices, which stand in \`LICENSES.txt\` beside the program.

${[...licences]
  .sort(([, a], [, b]) => b.length - a.length)
  .map(([licence, names]) => `- ${licence}: ${names.join(', ')}`)
  .join('\n')}
`,
);
