// Keeps what a run found and writes RESULTS.md of it.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { equivalent } from './equivalent.mjs';
import { rooms } from './rooms.mjs';
import { sourcesOf } from './sources.mjs';

const store = join(import.meta.dirname, 'results.jsonl');
const page = join(import.meta.dirname, 'RESULTS.md');

const linesOf = (path) =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
/** File -> what its last run found. */
const read = () => (existsSync(store) ? Object.fromEntries(linesOf(store).map(({ file, ...of }) => [file, of])) : {});

/** Takes over the files of a run (as-found.mjs); those that it did not touch keep what an earlier one found. */
export function keepResults(path) {
  const [{ planned }, ...changes] = linesOf(path);
  const found = read();
  for (const [file, of] of Object.entries(planned)) {
    found[file] = fileResult(
      of,
      changes.filter((change) => change.file === file),
    );
  }
  const lines = Object.keys(found)
    .sort()
    .map((file) => JSON.stringify({ file, ...found[file] }));
  writeFileSync(store, `${lines.join('\n')}\n`);
}

function fileResult(planned, changes) {
  const of = (...statuses) => changes.filter(({ status }) => statuses.includes(status));
  const killed = of('Killed', 'RuntimeError').length;
  const endless = of('Timeout').length;
  const alive = of('Survived', 'NoCoverage').map(({ line, from, to }) => ({ line, from, to }));
  return { planned, killed, endless, untested: of('NoCoverage').length, alive };
}

const reasonFor = (file, { line, from, to }) =>
  equivalent.find(
    (one) =>
      one.file === file &&
      one.line === line &&
      (one.from === undefined || one.from === from) &&
      (one.to === undefined || one.to === to),
  )?.because;

function tallyOf(results) {
  const sum = { planned: 0, changes: 0, noticed: 0, endless: 0, explained: 0, left: 0, untested: 0 };
  for (const [file, { planned, killed, endless, untested, alive }] of results) {
    sum.planned += planned;
    sum.noticed += killed + endless;
    sum.endless += endless;
    sum.untested += untested;
    sum.changes += killed + endless + alive.length;
    for (const one of alive) sum[reasonFor(file, one) === undefined ? 'left' : 'explained']++;
  }
  return sum;
}

const percent = (part, whole) => (whole === 0 ? '–' : `${((100 * part) / whole).toFixed(1)} %`);
const code = (text) => `\`${text.replaceAll('|', '\\|').replaceAll('`', "'")}\``;

function roomRows(room, found) {
  const all = sourcesOf(room);
  const run = all.filter((file) => file in found);
  const { planned, changes, noticed, endless, explained, left } = tallyOf(run.map((file) => [file, found[file]]));
  return `| ${[room, `${run.length} of ${all.length}`, planned, changes, noticed, endless, explained, left, percent(noticed, changes), percent(noticed, changes - explained)].join(' | ')} |`;
}

function fileRows(room, found) {
  const run = sourcesOf(room).filter((file) => file in found);
  if (run.length === 0) return `### ${room}\n\nNot run.\n`;
  const rows = run.map((file) => {
    const { planned, changes, noticed, explained, left, untested } = tallyOf([[file, found[file]]]);
    return `| ${[file.replace(/^packages\/[^/]+\/src\//, ''), planned, changes, noticed, explained, left, untested, percent(noticed, changes)].join(' | ')} |`;
  });
  const missing = sourcesOf(room)
    .filter((file) => !(file in found))
    .map((file) => file.replace(/^packages\/[^/]+\/src\//, ''));
  return `### ${room}

| file | changes | asked | noticed | explained | left | of these run by no test | score |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${rows.join('\n')}
${missing.length === 0 ? '' : `\nNot run: ${missing.join(', ')}.\n`}`;
}

function leftRows(room, found) {
  const rows = sourcesOf(room)
    .filter((file) => file in found)
    .flatMap((file) =>
      found[file].alive
        .filter((one) => reasonFor(file, one) === undefined)
        .map(
          ({ from, to }) =>
            `| ${file.replace(/^packages\//, '').replace('/src/', '/')} | ${code(from)} | ${code(to)} |`,
        ),
    );
  return rows.length === 0 ? '' : `### ${room}\n\n| file | from | to |\n| --- | --- | --- |\n${rows.join('\n')}\n`;
}

/** Explanations of changes that no run has left alive: the line is gone, or a test kills it after all. */
function staleExplanations(found) {
  return equivalent.filter(
    ({ file, line, from, to }) =>
      file in found &&
      !found[file].alive.some(
        (one) => one.line === line && (from === undefined || one.from === from) && (to === undefined || one.to === to),
      ),
  );
}

function explainedRows(found) {
  const rows = Object.entries(found).flatMap(([file, { alive }]) =>
    alive.flatMap((one) => {
      const reason = reasonFor(file, one);
      const short = file.replace(/^packages\//, '').replace('/src/', '/');
      return reason === undefined ? [] : [`| ${short} | ${code(one.from)} | ${code(one.to)} | ${reason} |`];
    }),
  );
  return `| file | from | to | why no test can tell |\n| --- | --- | --- | --- |\n${rows.join('\n')}`;
}

export function writePage() {
  const found = read();
  for (const { file, line } of staleExplanations(found)) console.warn(`explained, but not alive: ${file}: ${line}`);
  const names = Object.keys(rooms);
  writeFileSync(
    page,
    `# Changed sources that the tests notice

Written by \`npm run mutate\`; README.md beside this page says how and what the words mean.

| room | files run | changes | asked | noticed | of these endless | explained | left | score | without the explained |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
${names.map((room) => roomRows(room, found)).join('\n')}

## Files

${names.map((room) => fileRows(room, found)).join('\n')}
## Left alive

Changes that tests could notice and do not, or that nobody has thought through yet.

${names
  .map((room) => leftRows(room, found))
  .filter((part) => part !== '')
  .join('\n')}
## Explained

Changes that make no difference to a result, each with the reason.

${explainedRows(found)}
`,
  );
}
