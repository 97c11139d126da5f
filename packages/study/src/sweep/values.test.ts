import { join } from 'node:path';
import { loadSite, SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { siteErrorText, valueProblems } from './values.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const axis = (path: string, ...values: unknown[]) => ({ path, values });
const problems = (...axes: { path: string; values: unknown[] }[]) => valueProblems(site, axes);

test('values that fit are no problem', () => {
  expect(problems(axis('bank.capacity', '500 Ah', '600 Ah'), axis('variant', 'base', 'fixed'))).toEqual([]);
});

test('of many wrong values of an axis three are told, each without the path that is known', () => {
  const wrong = ['1 m', '2 m', '3 m', '4 m'];
  const told = problems(axis('bank.capacity', ...wrong), axis('bank.floor', '30 %', '1 m'));
  expect(told.map(({ path, value }) => [path, value])).toEqual([
    ['bank.capacity', '1 m'],
    ['bank.capacity', '2 m'],
    ['bank.capacity', '3 m'],
    ['bank.floor', '1 m'],
  ]);
  for (const { path, message } of told) expect(message).not.toContain(path);
});

test('the path is taken off where the array is named by its number too', () => {
  const [problem] = problems(axis('arrays.0.strings', 'many'));
  expect(problem).toMatchObject({ path: 'arrays.0.strings', value: 'many' });
  expect(problem!.message).not.toMatch(/arrays|strings:/);
});

test('an unknown variant is told, and nothing else before it is mended', () => {
  const told = problems(axis('variant', 'base', 'fixd'), axis('bank.capacity', '1 m'));
  expect(told.map(({ path, value }) => [path, value])).toEqual([['variant', 'fixd']]);
  expect(told[0]!.message).toContain('fixed');
});

test('a value that one of the variants takes is right', () => {
  const turn = axis('arrays.garden pole.mount.turn', 200);
  expect(problems(axis('variant', 'fixed', 'base'), turn)).toEqual([]);
  expect(problems(axis('variant', 'fixed'), turn)).toHaveLength(1);
  expect(problems(turn)).toEqual([]);
});

// The engine of the site stops at 80 %: to start at 85 % it must stop later.
test('a value that one of many companions makes right is right, the last of them too', () => {
  const start = axis('generator.start.below', '85 %');
  const stops = Array.from({ length: 30 }, (_, i) => `${61 + i} %`);
  expect(problems(start, axis('generator.stop.above', ...stops))).toEqual([]);
  expect(problems(start, axis('generator.stop.above', ...stops.slice(0, 20))).map(({ path }) => path)).toContain(
    'generator.start.below',
  );
});

test('of a long axis the values are tried from the first to the last', () => {
  const long = Array.from({ length: 80 }, (_, i) => `${500 + i} Ah`);
  expect(problems(axis('bank.capacity', ...long))).toEqual([]);
  expect(problems(axis('bank.capacity', ...long, '1 m')).map(({ value }) => value)).toEqual(['1 m']);
  expect(problems(axis('bank.capacity', '1 m', ...long)).map(({ value }) => value)).toEqual(['1 m']);
});

test('what is wrong with a site is said in one line', () => {
  const at = { line: 1, column: 1 };
  const error = new SiteError('site.yaml', [
    { ...at, path: '', message: 'no arrays' },
    { ...at, path: 'bank', message: 'no bank' },
  ]);
  expect(siteErrorText(error)).toBe('no arrays; bank: no bank');
});
