import { readFileSync } from 'node:fs';
import { OutOfRangeError } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { changedDesign } from '../changed-design.js';
import { fromSite } from '../from-site.js';
import { inputFiles } from '../input-files.js';
import { designOf, parseSite } from '../load-site.js';
import type { Site } from './origin.js';

const example = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');
const site = parseSite(example, '/somewhere/site.yaml');

/** 1-based line and column of the first place where a part of the example stands, from `after` on. */
function placeOf(part: string, after = ''): string {
  const before = example.slice(0, example.indexOf(part, example.indexOf(after))).split('\n');
  return `${before.length}:${before.at(-1)!.length + 1}`;
}

function messageOf(design: Site, path: string, key?: string): string {
  try {
    fromSite(design, path, () => {
      throw new OutOfRangeError('must be less', key);
    });
  } catch (error) {
    return (error as Error).message;
  }
  return '';
}

test('what a room finds out of range is told with file, line, column and the keys that lead there', () => {
  const at = `/somewhere/site.yaml:${placeOf('vmp: 32.5 V')}`;
  expect(messageOf(site.base, 'arrays[0].module', 'vmp')).toBe(`${at}: arrays[0].module.vmp: must be less`);
  // The key is not written: its surroundings are.
  expect(messageOf(site.base, 'bank', 'cabinet.heatedBy.at')).toMatch(
    `/somewhere/site.yaml:${placeOf('cabinet:')}: bank.cabinet.heatedBy.at: must be less`,
  );
});

test('in a variant it is told where the variant changes it, and in the base where it does not', () => {
  const fixed = designOf(site, 'fixed');
  expect(messageOf(fixed, 'arrays[0].mount', 'tilt')).toBe(
    `/somewhere/site.yaml:${placeOf('tilt: 60', 'variants:')}: variants.fixed.arrays[0].mount.tilt: must be less`,
  );
  expect(messageOf(fixed, 'bank', 'floor')).toBe(`/somewhere/site.yaml:${placeOf('floor:')}: bank.floor: must be less`);
});

test('a design with changes that stand nowhere, and one built in code, are told without a place', () => {
  const changed = changedDesign(site, { 'bank.capacity': '500 Ah' });
  expect(messageOf(changed, 'bank', 'capacity')).toBe('/somewhere/site.yaml: bank.capacity: must be less');
  const { origin: _, ...built } = site.base;
  expect(messageOf(built, 'bank', 'capacity')).toBe(`${built.name}: bank.capacity: must be less`);
});

test('an error of ours is no problem of the site file', () => {
  for (const fault of [new TypeError('undefined is not a function'), new RangeError('invalid array length')]) {
    const run = () =>
      fromSite(site.base, 'bank', () => {
        throw fault;
      });
    expect(run).toThrow(fault);
  }
});

test('a site is plain data: a copy for a worker says the same', () => {
  const copy = structuredClone(site);
  expect(copy).toEqual(site);
  expect(messageOf(copy.base, 'arrays[0].module', 'vmp')).toBe(messageOf(site.base, 'arrays[0].module', 'vmp'));
});

test('files are found from the folder of the site file, in variants and changed designs too, and kept as written', () => {
  const text = example.replace(/^weather: .*$/m, 'weather: { file: a.csv, otherYears: [sub/b.csv, /c.csv] }');
  const named = parseSite(`${text}\nmeasuredLoad: { file: ../d.csv }\n`, '/somewhere/site.yaml');
  for (const design of [named.base, designOf(named, 'fixed'), changedDesign(named, { 'bank.capacity': '500 Ah' })]) {
    expect(design.weather).toMatchObject({
      file: { written: 'a.csv', path: '/somewhere/a.csv' },
      otherYears: [
        { written: 'sub/b.csv', path: '/somewhere/sub/b.csv' },
        { written: '/c.csv', path: '/c.csv' },
      ],
    });
    expect(design.measuredLoad!.file).toEqual({ written: '../d.csv', path: '/d.csv' });
  }
  expect([...inputFiles(named)].sort()).toEqual(
    ['/somewhere/site.yaml', '/somewhere/a.csv', '/somewhere/sub/b.csv', '/c.csv', '/d.csv'].sort(),
  );
});
