import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { loadSite, siteJsonSchema } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../examples');
const sites = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

test('there are examples', () => {
  expect(sites.length).toBeGreaterThanOrEqual(2);
});

test.each(sites)('%s runs, with all its variants, without exceeding what it does not mean to', (name) => {
  const file = join(folder, name);
  const site = loadSite(file);
  const prepared = new PreparedCache();
  for (const design of [site.base, ...site.variants.values()]) {
    const { summary } = simulateSite(design, prepared);
    expect(summary.ledger.worstHourImbalanceKWh).toBeLessThan(1e-9);
    expect(summary.load.servedKWh).toBeGreaterThan(0);
  }
});

test('the example of everything names every key of the schema', () => {
  const keys = new Set<string>();
  const collect = (schema: unknown): void => {
    if (typeof schema !== 'object' || schema === null) return;
    const { properties } = schema as { properties?: Record<string, unknown> };
    for (const key of Object.keys(properties ?? {})) keys.add(key);
    for (const inner of Object.values(schema)) collect(inner);
  };
  collect(siteJsonSchema());
  const text = sites.map((name) => JSON.stringify(loadSite(join(folder, name)).document.content)).join();
  // The file forms of weather and clearness stand against monthly means and irradiation: one site cannot have both.
  const eitherOr = [
    'clearness',
    'moveTemperature',
    'otherYears',
    'accepted',
    'years',
    'leaveOut',
    'clock',
    'shift',
    'summerTime',
  ];
  const missing = [...keys].filter((key) => !text.includes(`"${key}"`) && !eitherOr.includes(key));
  expect(missing).toEqual([]);
});
