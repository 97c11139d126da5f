import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { petrolSet, plantOf } from '../../packages/year/src/loop/plant.fixture.js';
import { settle } from '../../packages/year/src/loop/settle.js';
import { boundTable, type Kept, keepBounds, keptBounds, printedTable } from './bounds.js';
import { leastEngine } from './least-engine.js';

const examples = join(import.meta.dirname, '../../examples');

const yearOf = (name: string) => simulateSite(loadSite(join(examples, name)).base);

// Nothing but an engine feeds 100 W all year: 876 kWh, however it is run.
test('without sun the least is the load', async () => {
  const plant = plantOf({ dcW: () => 100, generator: petrolSet });
  const { leastKWh } = await leastEngine({ plant, ledger: settle(plant).ledger }, 24);
  expect(leastKWh).toBeCloseTo(876, 6);
});

// With enough sun every day there is nothing left for an engine to give.
test('with sun enough for every day the least is nothing', async () => {
  const plant = plantOf({ dcW: () => 100, sunW: (h) => (h % 24 === 12 ? 3000 : 0), generator: petrolSet });
  const { leastKWh } = await leastEngine({ plant, ledger: settle(plant).ledger }, 24);
  expect(leastKWh).toBeCloseTo(0, 9);
});

// A DC set, and an AC set that carries AC loads; day by day, which bounds less sharply than hour by hour.
test.each(['kettle-pond.yaml', 'places/standby-trimmed.yaml'])(
  '%s runs its engine no less than foresight could',
  async (name) => {
    const { leastKWh, ranKWh } = await leastEngine(yearOf(name), 24);
    expect(leastKWh).toBeGreaterThan(1);
    expect(ranKWh).toBeGreaterThan(leastKWh);
  },
);

test('the table that the README prints is that of the last run, and no rule beat its bound', () => {
  const kept = keptBounds();
  expect(printedTable()).toBe(boundTable(kept));
  expect(kept.length).toBeGreaterThanOrEqual(10);
  for (const { site, leastKWh, ranKWh } of kept) expect(ranKWh, site).toBeGreaterThanOrEqual(leastKWh);
});

test.runIf(process.env.BOUND_SITES)('all places hour by hour', async () => {
  const places = readdirSync(join(examples, 'places')).filter((name) => name.endsWith('.yaml'));
  const found: Kept[] = [];
  for (const name of ['kettle-pond.yaml', ...places.map((place) => `places/${place}`)]) {
    const year = yearOf(name);
    if (year.summary.generator.hours === 0) continue;
    const bound = await leastEngine(year, 1);
    found.push({ site: name, bus: year.site.generator!.output.bus, hours: year.summary.generator.hours, ...bound });
    process.stdout.write(`${name}: ${bound.ranKWh.toFixed(1)} kWh, at least ${bound.leastKWh.toFixed(1)}\n`);
    keepBounds(found);
  }
});
