import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

// READMEs whose examples are lines with their results behind them: `expression; // result, what it is`. Those of other rooms
// have tests of their own beside them.
const readmes = [
  ...['tally', 'site', 'year', 'study'].map((room) => join('packages', room)),
  join('docs', 'reference'),
];
const root = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(root, 'tests', 'newcomer-readme-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Example {
  /** The folder of its README. */
  at: string;
  code: string;
}
/** The result that a line states, and the same line with its value kept. */
function asChecked(code: string): string {
  return code.replace(
    /^([^\s/}].*); \/\/ (null|true|false|-?[\d.]+|'[^']*')(?=[\s,]|$).*$/gm,
    'checked.push([$1, $2]);',
  );
}

const stated: Example[] = readmes.flatMap((at) => {
  const readme = readFileSync(join(root, at, 'README.md'), 'utf8');
  const blocks = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code]) => code!);
  // An example on a site of the reader's own has nothing to be held against.
  return blocks
    .filter((code) => asChecked(code) !== code && !code.includes("'site.yaml'"))
    .map((code) => ({ at, code }));
});

test('each of these has such an example', () => {
  expect([...new Set(stated.map(({ at }) => at))]).toEqual(readmes);
});

test.each(stated)('an example of $at gives what it states', async ({ at, code }) => {
  const file = join(folder, `${at.replace('/', '-')}-${code.length}.mjs`);
  writeFileSync(file, `export const checked = [];\n${asChecked(code)}`);
  const { checked } = (await import(/* @vite-ignore */ file)) as { checked: [unknown, unknown][] };
  for (const [is, said] of checked) expect(is).toEqual(said);
});
