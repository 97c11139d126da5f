import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Site } from './document/origin.js';
import { parseSite } from './load-site.js';
import { snowExtremes } from './snow-extremes.js';

const file = new URL('../../../examples/kettle-pond.yaml', import.meta.url).pathname;
const valuesOf = ({ origin, ...values }: Site) => values;
const withSnow = (snow: string) =>
  parseSite(readFileSync(file, 'utf8').replace('\narrays:', `\nsnow: ${snow}\narrays:`), file).base;

test('the extremes are the design that a site file with cover: none or cover: full describes, and nothing else', () => {
  const rest = 'wholeUpTo: 45, bareFrom: 85, clearing: { within: 6 h }';
  const { none, full } = snowExtremes(withSnow(`{ ${rest} }`));
  expect(valuesOf(none)).toEqual(valuesOf(withSnow(`{ cover: none, ${rest} }`)));
  expect(valuesOf(full)).toEqual(valuesOf(withSnow(`{ cover: full, ${rest} }`)));
  expect(valuesOf(none)).toEqual(valuesOf(withSnow(`{ onArray: false, ${rest} }`)));
  expect(withSnow('{ onArray: true }').snow.cover).toBe('usual');
});

test('tilts of snow that do not fit together are told with their key', () => {
  expect(() => withSnow('{ wholeUpTo: 50, bareFrom: 50 }')).toThrow(
    /bareFrom.*found bareFrom 50.*more than wholeUpTo, 50/s,
  );
  expect(() => withSnow('{ bareFrom: 95 }')).toThrow(/bareFrom.*found 95.*from 0 to 90/s);
  expect(() => withSnow('{ cover: full, onArray: false }')).toThrow(/onArray.*onArray: false means cover: none/s);
  expect(() => withSnow('{ clearing: { within: 400 d } }')).toThrow(/within.*zero to a year/s);
});
