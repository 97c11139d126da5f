import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { yearsOfSites } from './years-of-sites.js';

const { base, variants } = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));

test('designs of one place and weather share their years, made once', () => {
  const yearsOf = yearsOfSites({ years: 3, seed: 4 });
  const years = yearsOf(base);
  expect(years.count).toBe(3);
  expect(yearsOf(base)).toBe(years);
  expect(yearsOf(variants.get('fixed')!)).toBe(years);
});

test('a design that stands elsewhere, or under another sky, has years of its own', () => {
  const yearsOf = yearsOfSites({ years: 3, seed: 4 });
  const years = yearsOf(base);
  expect(yearsOf({ ...base, name: 'Otter Bend' })).not.toBe(years);
  expect(yearsOf({ ...base, place: { ...base.place, latitude: 50 } })).not.toBe(years);
});
