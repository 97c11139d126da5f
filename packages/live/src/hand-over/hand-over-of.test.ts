import { readFileSync } from 'node:fs';
import { parseSite, SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { handOverOf } from './hand-over-of.js';

const file = new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname;

test('a variant under other weather is refused as the page to begin with, and not shown as the base', () => {
  const text = readFileSync(file, 'utf8').replace(
    /^variants:\n/m,
    'variants:\n  hilltop: { place: { elevation: 900 m } }\n',
  );
  const site = parseSite(text, file);
  expect(() => handOverOf(site, { variant: 'hilltop', units: 'metric' })).toThrow(SiteError);
  expect(() => handOverOf(site, { variant: 'hilltop', units: 'metric' })).toThrow(
    /variants\.hilltop: stands under other weather/,
  );
  expect(handOverOf(site, { variant: 'taller pole', units: 'metric' }).begin).toBe('taller pole');
});
