import { carryText, compareHtml, costText, mountText } from '@wintergap/report';
import { carryVerdict, readCosts, studyCarry } from '@wintergap/seasonal';
import { parseSite } from '@wintergap/site';
import {
  commonAnswer,
  comparedCosts,
  mountPricesOf,
  mountStudy,
  planSweep,
  runDesigns,
  wholeSweep,
} from '@wintergap/study';
import { simulateSite } from '@wintergap/year';
import { beforeAll, expect, test } from 'vitest';

// An invented place with invented prices, in US units.
const text = `
name: Stony Ridge cabin
place: { latitude: 45.3, longitude: -84.6, elevation: 900 ft, utcOffset: -5 h }
units: us
weather: { seed: 5, months: { irradiation: [1.5 kWh/m2, 2.5 kWh/m2, 3.8 kWh/m2, 4.9 kWh/m2, 5.7 kWh/m2, 6.2 kWh/m2,
                                            6.1 kWh/m2, 5.2 kWh/m2, 3.9 kWh/m2, 2.5 kWh/m2, 1.5 kWh/m2, 1.2 kWh/m2],
                              air: [-8 degC, -7 degC, -2 degC, 6 degC, 13 degC, 18 degC,
                                    21 degC, 20 degC, 15 degC, 8 degC, 2 degC, -5 degC] } }
snow: { cover: none }
arrays:
  - name: roof
    module: { power: 400 W, vmp: 31 V, imp: 12.9 A, voc: 37.2 V, isc: 13.7 A, cells: 54, price: 190 }
    inSeries: 3
    strings: 1
    mount: { kind: fixed, tilt: 60, azimuth: south, price: 900 }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 100 A, price: 650 }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: 600 Ah, floor: 50 %, price: 190 /kWh, cabinet: { insulation: 1.2 W/K } }
loads: [{ name: radio, power: 120 W, bus: dc }]
generator:
  output: { bus: dc, power: 3 kW }
  fuel: { kind: petrol, atFull: 0.42 gal/h, idle: 0.12 gal/h, price: 4.10 /gal }
  start: { below: 55 % }
  stop: { above: 80 % }
  price: 1500
  lives: [1500 h, 15 years]
costs: { years: 20, discount: 3 %, currency: USD }
sweep: { designs: { variant: [base, pole], bank.capacity: [500 Ah, 600 Ah] } }
variants:
  pole: { arrays: [{ name: roof, mount: { kind: pole, tilt: 60 } }] }
  dear pole: { arrays: [{ name: roof, mount: { kind: pole, tilt: 60, price: 30000 } }] }
`;
const site = parseSite(text, 'ridge.yaml');
const costs = readCosts(site)!;
const terms = { years: costs.years, currency: site.base.costs?.currency };
const named = [['base', site.base] as const, ...site.variants].map(([name, design]) => ({ name, site: design }));
let designs: { name: string; result: ReturnType<typeof simulateSite> }[];
let answer: ReturnType<typeof commonAnswer>;
let priced: ReturnType<typeof comparedCosts>;
beforeAll(async () => {
  designs = named.map(({ name, site: design }) => ({ name, result: simulateSite(design) }));
  answer = commonAnswer(await runDesigns(named, { years: 3, workers: 1 }));
  priced = comparedCosts(designs, answer, costs);
});

const spaced = (value: number) => value.toFixed(0).replace(/\B(?=(\d{3})+$)/g, value >= 10_000 ? ' ' : '');

test('text, page and figures say the same cost', async () => {
  const page = await compareHtml(designs, answer, 'us', { costs: { designs: priced, terms } });
  const written = costText(priced, terms, 'us');
  for (const { cost } of priced) {
    for (const value of [cost.firstCost!, cost.runningPerYear!, cost.perYear!, cost.lifeCycle!.total]) {
      expect(written).toContain(spaced(value));
      expect(page).toContain(spaced(value));
    }
  }
  for (const line of written.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  expect(written).toContain('USD');
});

// What the pole saves in all but its mount, by the columns of the table; the fixed mount's own price is saved with it.
test('a tracker without a price is worth what it saves, and with one it is dearer by the rest', () => {
  const [base, pole, dear] = priced;
  const saved = base!.cost.known!.total - pole!.cost.known!.total;
  expect(saved).toBeGreaterThan(900);
  expect(pole!.againstBase).toMatchObject({ here: ['pole mount of "roof"'], there: [] });
  expect(-pole!.againstBase!.difference.mean).toBeCloseTo(saved, 6);
  expect(dear!.againstBase).toMatchObject({ here: [], there: [] });
  expect(dear!.againstBase!.difference.mean).toBeCloseTo(30_000 - saved, 6);
  const written = costText(priced, terms, 'us').replace(/\s+/g, ' ');
  expect(written).toContain(`has no price in the site file, and is worth up to ${spaced(saved)} USD`);
  expect(written).toContain(`"dear pole" costs ${spaced(30_000 - saved)} USD more than base over 20 years`);
  expect(written).toContain('Not in it, because it has no price: cabinet, pole mount of "roof".');
});

test('a sweep has no cost where some of its designs lack a price that others do not need', () => {
  expect(planSweep(site, wholeSweep).columns.cost).toBe(false);
  const told = parseSite(text.replace('[base, pole]', '[base, dear pole]'), 'ridge.yaml');
  expect(planSweep(told, wholeSweep).columns.cost).toBe(true);
});

test('the mount page says what a tracker may cost, and which is cheaper where the file prices it', async () => {
  const study = await mountStudy(site.base, undefined, costs, { years: 1, workers: 1 }, mountPricesOf(site, 'roof'));
  const row = (name: string) => study.rows.find((one) => one.name === name)!;
  const pole = row('pole');
  expect(pole.price).toBe(30_000);
  // All but the mounts, and then the mounts: 30000 for one, 900 for the other.
  expect(pole.costAgainstFixed!.difference.mean).toBeCloseTo(30_000 - 900 - pole.worth!, 6);
  expect(row('two axes').costAgainstFixed!.here).toEqual(['two-axis mount of "roof"']);
  const page = mountText(study).replace(/\s+/g, ' ');
  expect(page).toContain(`A pole may cost up to ${spaced(pole.worth!)} USD more than the fixed mount over 20 years`);
  expect(page).toMatch(/At its price "pole" costs [\d ]+ USD more than "fixed at/);
});

// A steeper seasonal mount for nothing would beat the fixed one that has a price.
test('no rival of a seasonal store is called cheaper for want of a price', () => {
  const file = parseSite(text, 'ridge.yaml');
  const study = studyCarry(file, undefined);
  const tilted = study.rivals.find(({ kind }) => kind === 'tilt')!;
  expect(tilted.cost!.unpriced.map(({ name }) => name)).toContain('seasonal mount of "roof"');
  expect(tilted.cost!.lifeCycle!.total).toBeLessThan(study.asItIsCost!.lifeCycle!.total);
  expect(carryVerdict(study, 'us')).not.toContain('winter tilt');
  const page = carryText(study, 'us').replace(/\s+/g, ' ');
  expect(page).toMatch(/winter tilt \d+ instead of 60 .*? [\d ]+ \+/);
  expect(page).toContain('seasonal mount of "roof", which has no price');
});
