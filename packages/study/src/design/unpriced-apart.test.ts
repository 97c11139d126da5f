import { join } from 'node:path';
import { readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { unpricedApart } from './unpriced-apart.js';

// Its prices are those of array, bank and engine: inverter, cabinet and a pole that turns have none.
const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const costs = readCosts(site)!;
const apart = (path: string, ...values: unknown[]) => unpricedApart(site, [{ path, values }], costs);
const pole = 'pole mount of "garden pole"';

test('what every design has leaves the order as it is, with a price or without', () => {
  expect(unpricedApart(site, [], costs)).toEqual([]);
  expect(apart('bank.capacity', '600 Ah', '1000 Ah')).toEqual([]);
  expect(apart('variant', 'base', 'taller pole')).toEqual([]);
});

test('a variant that does without an unpriced thing sets the designs apart', () => {
  expect(apart('variant', 'base', 'fixed')).toEqual([pole]);
});

test('so does a mapping that puts one thing in the place of another', () => {
  const fixed = { kind: 'fixed', tilt: 60, azimuth: 180 };
  expect(apart('arrays.garden pole.mount', fixed)).toEqual([pole]);
  expect(
    unpricedApart(
      site,
      [
        { path: 'bank.cabinet', values: [null] },
        { path: 'variant', values: ['fixed'] },
      ],
      costs,
    ),
  ).toEqual([pole, 'cabinet']);
});

test('a mapping that no design takes is passed over', () => {
  expect(apart('arrays.garden pole.mount', { kind: 'fixed', tilt: 700, azimuth: 180 })).toEqual([]);
});
