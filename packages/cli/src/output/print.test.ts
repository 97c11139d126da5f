import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { harmless } from './print.js';

test('escape sequences are shown, not obeyed; tables, tabs and letters of all scripts stay', () => {
  expect(harmless('\u001b[2J\u001b]0;owned\u0007\u009b31m\u202e')).toBe(
    '\\u001b[2J\\u001b]0;owned\\u0007\\u009b31m\\u202e',
  );
  const table = 'Mühle │ −3 °C\n\t小屋 ✓ 🌞\n';
  expect(harmless(table)).toBe(table);
});

test('a document of JSON says the same afterwards', () => {
  const names = ['\u009b31m', '\u007f', '\u202e', 'plain'];
  expect(JSON.parse(harmless(JSON.stringify(names, null, 2)))).toEqual(names);
});

test('nothing in the program writes to the terminal by another way; the progress bar has no text of others', () => {
  for (const file of readdirSync(import.meta.dirname, { recursive: true, encoding: 'utf8' })) {
    if (!file.endsWith('.ts') || /(^print|progress|\.test)\b.*\.ts$/.test(file)) continue;
    expect(readFileSync(join(import.meta.dirname, file), 'utf8'), file).not.toMatch(
      /process\.std(out|err)\.write|console\./,
    );
  }
});
