import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { editorSchema } from '../packages/cli/src/site/editor-schema.js';
import { keyWords } from '../packages/site/src/editor/key-words.js';
import type { JsonSchema } from '../packages/site/src/editor/schema-form.js';
import { program } from './built-program.js';
import { type Editor, type Position, startEditor } from './language-server.js';

const folder = mkdtempSync(join(tmpdir(), 'wintergap-editor-'));
const place = join(folder, 'my-place');
const siteFile = join(place, 'site.yaml');
let editor: Editor;
let site: string;

beforeAll(async () => {
  expect(spawnSync(process.execPath, [program, 'start', place]).status).toBe(0);
  site = readFileSync(siteFile, 'utf8');
  editor = await startEditor();
});
afterAll(() => {
  editor.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Where a text stands in another. */
function positionOf(text: string, part: string): Position {
  const before = text.slice(0, text.indexOf(part)).split('\n');
  return { line: before.length - 1, character: before.at(-1)!.length + 1 };
}

const schema: JsonSchema = JSON.parse(editorSchema());

/** Every key of the schema by its path, with what an editor shows on it. */
function shownByKey(of: JsonSchema, path: string, shown = new Map<string, string>()): Map<string, string> {
  for (const [key, value] of Object.entries(of.properties ?? {})) {
    const at = path === '' ? key : `${path}.${key}`;
    shown.set(at, value.description ?? '');
    if (at !== 'variants') shownByKey(value, at, shown);
  }
  const { items, prefixItems = [], anyOf = [], oneOf = [] } = of;
  for (const part of [items ?? [], prefixItems, anyOf, oneOf].flat()) shownByKey(part, path, shown);
  return shown;
}

test('every key of the site file has its words, and every word its key', () => {
  const shown = shownByKey(schema, '');
  expect(shown.size).toBeGreaterThan(200);
  expect([...shown.keys()].filter((key) => !keyWords[key])).toEqual([]);
  expect(Object.keys(keyWords).filter((key) => !shown.has(key))).toEqual([]);
  for (const [key, text] of shown) expect(text, key).toMatch(new RegExp(`^${keyWords[key]!.slice(0, 8)}`));
  expect(shown.get('bank.voltage')).toBe(
    'Nominal voltage of the whole bank. A voltage, written such as 24 V or 24000 mV; 2 V to 1000 V.',
  );
});

test('the program has the schema of its sources', () => {
  expect(readFileSync(join(place, 'wintergap.schema.json'), 'utf8')).toBe(editorSchema());
});

test('an editor finds nothing wrong in the site that start writes, nor in the example that uses every key', async () => {
  expect(site.split('\n')[0]).toBe('# yaml-language-server: $schema=./wintergap.schema.json');
  expect(await editor.open(siteFile, site)).toEqual([]);
  const everything = readFileSync(join(import.meta.dirname, '../examples/everything.yaml'), 'utf8');
  expect(await editor.open(join(place, 'everything.yaml'), `${site.split('\n')[0]}\n${everything}`)).toEqual([]);
});

test('an editor shows words and unit of a key, offers keys and words, and marks what is no key', async () => {
  const file = join(place, 'edited.yaml');
  const text = site
    .replace(/^bank:\n/m, 'bank:\n  tallCurrent: 5 A\n  f\n')
    .replace(/^ {2}chemistry: .*$/m, '  chemistry: ');
  const wrong = await editor.open(file, text);
  expect(wrong.join('\n')).toMatch(/tallCurrent is not allowed/);
  expect(await editor.hover(file, positionOf(text, 'latitude'))).toMatch(/Latitude, degrees, north positive/);
  expect(await editor.hover(file, positionOf(text, 'inSeries'))).toMatch(
    /Modules in one string\. A bare whole number, 1 to 100/,
  );
  const { line } = positionOf(text, '  f\n');
  expect(await editor.complete(file, { line, character: 3 })).toEqual(expect.arrayContaining(['float', 'tailCurrent']));
  const chemistry = positionOf(text, '  chemistry: ');
  expect(await editor.complete(file, { line: chemistry.line, character: 13 })).toEqual(
    expect.arrayContaining(['agm', 'lithium-iron-phosphate']),
  );
});
