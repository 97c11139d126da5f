import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { withVariant } from './with-variant.js';

const honeyHouse = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');
const change = { bank: { capacity: '800 Ah' }, loads: [{ name: 'freezer: old', remove: true }] };

test.each([
  ['a file with variants', honeyHouse],
  ['one without any', 'name: a place # mine\nbank: { voltage: 24 V }'],
  ['one with variants on one line', 'name: a place\nvariants: { small: { bank: { capacity: 300 Ah } } }\n'],
  ['one with an empty key', 'name: a place\nvariants:\n'],
  ['one that ends with its variants', 'name: a place\nvariants:\n    small: { bank: { capacity: 300 Ah } }\n'],
])('%s keeps what it says and gets the new variant', (_, text) => {
  const before = parse(text);
  const saved = withVariant(text, 'my "try", 2', change);
  expect(parse(saved)).toEqual({ ...before, variants: { ...before.variants, 'my "try", 2': change } });
});

test('the lines that were there stay to the letter, comments too', () => {
  const saved = withVariant(honeyHouse, 'less', change).split('\n');
  const lines = honeyHouse.split('\n');
  expect(lines.filter((line) => !saved.includes(line))).toEqual([]);
  expect(saved.length).toBe(lines.length + 6);
});

test('a variant of the same name makes way', () => {
  const saved = withVariant(withVariant(honeyHouse, 'less', {}), 'less', change);
  expect(parse(saved).variants.less).toEqual(change);
});
