import type { SiteFile } from '@wintergap/site';
import { expect, test } from 'vitest';
import { mountPricesOf } from './mount-prices.js';

const design = (...arrays: [name: string, mount: object][]) => ({
  arrays: arrays.map(([name, mount]) => ({ name, mount })),
});
const site = {
  base: design(['shed', { kind: 'fixed', tilt: 60, price: 300 }], ['field', { kind: 'fixed', price: 500, upkeep: 2 }]),
  variants: new Map([
    ['pole', design(['shed', { kind: 'pole', price: 900, lives: 8760 }], ['field', { kind: 'two-axis' }])],
    ['dear', design(['shed', { kind: 'fixed', price: 999 }], ['field', { kind: 'two-axis', price: 4000 }])],
  ]),
} as unknown as SiteFile;

test('a kind of mount costs what the first mount of that kind does, in the base or in a variant', () => {
  expect([...mountPricesOf(site, undefined)]).toStrictEqual([
    ['fixed', { price: 300 }],
    ['pole', { price: 900, lives: 8760 }],
    ['two-axis', { price: 4000 }],
  ]);
});

test('of one array only its own mounts count', () => {
  expect([...mountPricesOf(site, 'field')]).toStrictEqual([
    ['fixed', { price: 500, upkeep: 2 }],
    ['two-axis', { price: 4000 }],
  ]);
  expect([...mountPricesOf(site, 'barn')]).toStrictEqual([]);
});
