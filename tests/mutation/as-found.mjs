// Writes what becomes of each change as soon as it is known, so that a run that is stopped keeps what it has found.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';

const path = process.env.MUTATION_FOUND;
const sources = new Map();
const add = (line) => appendFileSync(path, `${JSON.stringify(line)}\n`);

/** Lines of a file as they were when the run began. */
function linesOf(fileName) {
  if (!sources.has(fileName)) sources.set(fileName, readFileSync(fileName, 'utf8').split('\n'));
  return sources.get(fileName);
}

const asFound = {
  onMutationTestingPlanReady({ mutantPlans }) {
    writeFileSync(path, '');
    const planned = {};
    for (const { mutant } of mutantPlans) {
      linesOf(mutant.fileName);
      if (mutant.status === 'Ignored') continue;
      const file = relative(process.cwd(), mutant.fileName);
      planned[file] = (planned[file] ?? 0) + 1;
    }
    add({ planned });
  },
  onMutantTested({ fileName, status, location: { start, end }, replacement }) {
    const line = linesOf(fileName)[start.line - 1];
    const from =
      start.line === end.line ? line.slice(start.column - 1, end.column - 1) : `${line.slice(start.column - 1)} ...`;
    add({
      file: relative(process.cwd(), fileName),
      status,
      line: line.trim(),
      from,
      to: replacement.replace(/\s+/g, ' '),
    });
  },
};

export const strykerPlugins = [{ kind: 'Reporter', name: 'as-found', value: asFound }];
