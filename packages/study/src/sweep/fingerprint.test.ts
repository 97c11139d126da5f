import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SiteFile } from '@wintergap/site';
import { afterAll, expect, test } from 'vitest';
import { sweepFingerprint } from './fingerprint.js';

const folder = mkdtempSync(join(tmpdir(), 'fingerprint-'));
afterAll(() => rmSync(folder, { recursive: true }));

const content = {
  weather: 'weather.csv',
  bank: { capacity: '500 Ah', floor: null },
  loads: [{ measured: 'load.csv' }],
};

/** A site of this content in a folder of its own, with the files that it names beside it. */
function siteIn(name: string, of: object = content, files: Record<string, string> = {}): SiteFile {
  mkdirSync(join(folder, name), { recursive: true });
  for (const [file, text] of Object.entries({
    'weather.csv': 'cold',
    'later.csv': 'cold too',
    'load.csv': 'much',
    ...files,
  })) {
    writeFileSync(join(folder, name, file), text);
  }
  const named = (file: string) => ({ written: file, path: join(folder, name, file) });
  return {
    file: join(folder, name, 'site.yaml'),
    base: {
      weather: { file: named('weather.csv'), otherYears: [named('later.csv')] },
      measuredLoad: { file: named('load.csv') },
    },
    variants: new Map(),
    document: { content: of, lists: { paths: [] } },
  } as unknown as SiteFile;
}
const whole = () => sweepFingerprint(siteIn('here'));

test('the same sweep has the same fingerprint in whatever folder it runs', () => {
  expect(whole()).toMatch(/^[0-9a-f]{32}$/);
  expect(sweepFingerprint(siteIn('there'))).toBe(whole());
});

test('a changed value, changed weather and a changed file deep in a list make another sweep', () => {
  const other = [
    siteIn('a', { ...content, bank: { capacity: '600 Ah', floor: null } }),
    siteIn('b', content, { 'weather.csv': 'warm' }),
    siteIn('c', content, { 'load.csv': 'little' }),
  ];
  const fingerprints = other.map((site) => sweepFingerprint(site));
  expect(new Set([whole(), ...fingerprints]).size).toBe(4);
});

test('years that a pattern leads to count, though the site file names none of them', () => {
  const changed = siteIn('d', { ...content, weather: { years: '*.csv' } }, { 'later.csv': 'warmer' });
  const same = siteIn('e', { ...content, weather: { years: '*.csv' } });
  expect(sweepFingerprint(changed)).not.toBe(sweepFingerprint(same));
});

test('common years and their seed count, and so does that there are none', () => {
  const of = (count: number, seed: number) => sweepFingerprint(siteIn('here'), { count, seed });
  expect(new Set([whole(), of(4, 1), of(5, 1), of(4, 2)]).size).toBe(4);
  expect(sweepFingerprint(siteIn('here'), null)).toBe(whole());
});

test('a sizing and a seasonal store in the file are no part of its sweep', () => {
  expect(sweepFingerprint(siteIn('here', { ...content, size: { least: 'array' }, carry: {} }))).toBe(whole());
});

test('a text that names a folder is only a text', () => {
  mkdirSync(join(folder, 'here', 'north'), { recursive: true });
  expect(() => sweepFingerprint(siteIn('here', { ...content, name: 'north' }))).not.toThrow();
});
