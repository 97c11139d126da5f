import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { headline, ledgerCsv, yearHtml } from './index.js';

test('the example in the README gives the results printed there', async () => {
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  const { base } = loadSite(fileURLToPath(new URL('../../../examples/kettle-pond.yaml', import.meta.url)));
  const year = simulateSite(base);
  // The figures change with the example; the sentence stays.
  const sentence = headline(year, 'metric')
    .replace(/\s+/g, ' ')
    .replace(/[\d.]+ (h|starts|L) /g, '... $1 ');
  const printed = /'(Kettle Pond[^']*, )\.\.\.'/.exec(readme)![1]!;
  expect(sentence.slice(0, printed.length)).toBe(printed);
  expect(readme).toContain(`// ${ledgerCsv(year.ledger).split('\n').length} : a heading`);
  const page = await yearHtml(year, 'metric');
  expect([page.slice(0, 15), page.trimEnd().slice(-7)]).toEqual(['<!doctype html>', '</html>']);
});
