import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { PreparedCache, simulateSite, siteWeather } from '@wintergap/year';
import { expect, test } from 'vitest';
import { commonYears } from './common-years.js';
import { fileYear } from './file-year.js';
import { runDesigns } from './run-designs.js';

const { base, variants } = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const sites = [
  { name: 'base', site: base },
  { name: 'fixed', site: variants.get('fixed')! },
];

test('the one year of the file is what results of it say, run again or not', async () => {
  const prepared = new PreparedCache();
  const results = sites.map(({ name, site }) => ({ name, result: simulateSite(site, prepared) }));
  expect(fileYear(results)).toEqual(await runDesigns(sites, { years: 1, workers: 1 }));
});

test('weather that was read for the year of the file is not read again for the common years', () => {
  const prepared = new PreparedCache();
  const read = siteWeather(base, prepared);
  expect(commonYears(base, { years: 1 }, prepared).weatherOf(0)).toBe(read);
});

test('a year made from monthly means says so', () => {
  const [{ name, site }] = sites as [(typeof sites)[number]];
  const result = { ...simulateSite(site), site: { ...site, weather: { months: {} } } } as never;
  expect(fileYear([{ name, result }]).weather).toEqual({ count: 1, kind: 'made', spread: null });
});
