import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { carryVerdict } from './carry-verdict.js';
import { closingAt, inventedPrices, inventedStudy, inventedYear, judged, neverClosing } from './study.fixture.js';

const verdict = (...study: Parameters<typeof inventedStudy>) => carryVerdict(inventedStudy(...study), 'metric');
const withoutEngine = inventedYear({});
const covered = judged(1400, 380);

test('where sun and bank carry the load there is nothing to retire, with an engine or without', () => {
  const nothing = judged(612, 0);
  expect(verdict({}, nothing)).toBe('Nothing to retire: sun and bank carry this load, and the engine gives nothing.');
  expect(verdict({ asItIs: withoutEngine }, nothing)).toBe(
    'Nothing to retire: sun and bank carry this load, and there is no engine.',
  );
  const study = inventedStudy({}, nothing);
  study.judged.year.beyondWh = 1000;
  expect(carryVerdict(study, 'metric')).toMatch(/^Nothing to retire/);
  study.judged.year.beyondWh = 53_000;
  expect(carryVerdict(study, 'metric')).toBe(
    'Nothing a store could answer: 53 kWh of AC load stay dark because the inverter cannot give them.',
  );
});

test('without an array, or where it gives nothing to spare, there is nothing to carry', () => {
  expect(verdict({ asItIs: inventedYear(undefined, {}, 0) })).toBe('Nothing to carry: this design has no array.');
  const spare = (surplusKWh: number, more = {}, scale = 1) => verdict({ surplusKWh, ...more }, covered, scale);
  const none =
    'Nothing to carry: bank and load take all that this array gives, in summer too. A larger array comes before a store.';
  expect(spare(0.4)).toBe(none);
  expect(spare(0.4, { closing: closingAt(2.34) })).toBe(
    `${none} 2.3 times this array would cover the year with a store.`,
  );
  expect(spare(0.4, { closing: neverClosing(16) })).toBe(`${none} Not even 16 times this array would cover the year.`);
  // Half a kilowatt-hour is a surplus, and so is that of a larger array.
  expect(spare(0.5)).toMatch(/^The store covers the year/);
  expect(spare(0.4, {}, 2)).toMatch(/^The store covers the year/);
});

test('an array larger than this one is named with the verdict', () => {
  expect(verdict({}, covered, 2)).toContain(' That is with an array 2 times as large as this one, its price included.');
  expect(verdict({}, covered, 1)).not.toContain('as large');
});

test('without an engine the question is what would answer the dark hours', () => {
  const dark = { asItIs: inventedYear({ costs: { currency: 'crowns' } }, { darkKWh: 380, darkHours: 1200 }) };
  const told = 'No engine to retire, but 380 kWh of load a year stay dark, over 1200 h.';
  const store = 'A store of 760 kWh, filled with 109 kW and emptied with 38 kW, would answer them';
  expect(verdict(dark, covered)).toBe(`${told} ${store}.`);
  expect(verdict(dark, covered, 2)).toBe(`${told} ${store}, with an array 2 times as large.`);
  const priced = judged(1400, 380, inventedPrices);
  expect(verdict(dark, priced)).toBe(
    `${told} ${store} and costs ${priced.cost!.store!.total.toFixed(0)} crowns over 20 years.`,
  );
  const short = `${told} A store would bring 214 kWh of the 380 kWh needed.`;
  expect(verdict(dark, judged(612, 380))).toBe(short);
  expect(verdict({ ...dark, closing: neverClosing(16) }, judged(612, 380))).toBe(short);
  expect(verdict({ ...dark, closing: closingAt(1.8) }, judged(612, 380))).toBe(
    `${short} 1.8 times this array would cover the year.`,
  );
});

const rival = (name: string, hoursSaved: number, more = {}) => ({
  ...{ kind: 'array', name, hoursSaved, generatorHours: 250 - hoursSaved, cost: null },
  ...more,
});

test('without prices the change that saves most engine hours is named, unless it is to leave load out', () => {
  const rivals = [rival('more', 60), rival('steeper', 90, { kind: 'tilt' }), rival('dark', 200, { kind: 'load' })];
  expect(verdict({ rivals })).toContain('Without a store, steeper saves 90 of the 250 engine hours.');
  // Of two that save alike the first is the simpler.
  expect(verdict({ rivals: [rival('first', 60), rival('second', 60)] })).toContain('first saves 60 of');
  expect(verdict({ rivals: [rival('hardly', 0.9)] })).not.toContain('hardly');
  expect(verdict({ rivals: [rival('just', 1)] })).toContain('just saves 1 of');
  expect(verdict({ rivals: [rival('dark', 200, { kind: 'load' })] })).not.toContain('Without a store');
});

const cost = (total: number, unpriced: object[] = []) => ({ lifeCycle: { total }, unpriced });

test('with prices the cheapest change is named where it is cheaper by a hundredth than engine and store', () => {
  const asItIs = inventedYear({ generator: { fuel: {} }, costs: { currency: 'crowns' } });
  const against = (rivals: object[], withStoreCost: number | null = null, asItIsCost: object = cost(10_000)) =>
    verdict({ asItIs, rivals, withStoreCost, asItIsCost });
  const two = [rival('more', 60, { cost: cost(9500) }), rival('steeper', 90, { cost: cost(9200) })];
  expect(against(two)).toContain(
    'Cheaper than that: steeper, which leaves 160 engine hours and costs 9200 crowns in all against 10000 crowns as it is.',
  );
  expect(against(two, 12_000)).toContain('Cheaper than both: steeper');
  expect(against(two, 9250)).not.toContain('Cheaper');
  expect(against([rival('first', 1, { cost: cost(9500) }), rival('second', 9, { cost: cost(9500) })])).toContain(
    'first',
  );
  expect(against([rival('hardly', 60, { cost: cost(9901) })])).not.toContain('Cheaper');
  expect(against([rival('just', 60, { cost: cost(9900) })])).toContain('just');
  expect(against([rival('unpriced', 60)])).not.toContain('Cheaper');
  expect(against([rival('open', 60, { cost: { lifeCycle: null, unpriced: [] } })])).not.toContain('Cheaper');
  expect(against([])).not.toContain('Cheaper');
});

test('a change with a thing whose price nobody knows is not called cheaper, unless the design has it already', () => {
  const mount = { part: 'mount', name: 'pole mount', thing: 'pole' };
  const rivals = [rival('pole', 60, { cost: cost(5000, [mount]) })];
  expect(verdict({ rivals, asItIsCost: cost(10_000) })).not.toContain('Cheaper');
  expect(verdict({ rivals, asItIsCost: cost(10_000, [mount]) })).toContain('Cheaper than that: pole');
});

const costs = (more = {}) => ({ store: { keptPerKWh: 20 }, years: 20, arrayPerKW: 500, ...more });

test('the prices that would settle it are asked for, and no others', () => {
  const wants = (...study: Parameters<typeof inventedStudy>) =>
    /give (.*) in the site file/.exec(verdict(...study))?.[1];
  const unfuelled = inventedYear({ generator: { fuel: {} } });
  expect(wants({ asItIs: unfuelled })).toBe('generator.fuel.price, costs.years, costs.store');
  expect(wants({})).toBe('costs.years, costs.store');
  expect(wants({ costs: costs() })).toBeUndefined();
  expect(wants({ costs: costs({ years: null }) })).toBe('costs.years');
  expect(wants({ costs: costs({ store: { keptPerKWh: null } }) })).toBe('costs.store');
  expect(wants({ costs: costs({ store: null }) })).toBe('costs.store');
  // A larger array is bought too; that of this design stands.
  const site = inventedYear({ ...inventedSite().base });
  expect(wants({ asItIs: site }, covered, 2)).toBe('costs.years, costs.store, costs.array');
  expect(wants({ asItIs: site, costs: costs({ arrayPerKW: null }) }, covered, 2)).toBe('costs.array');
  expect(wants({ asItIs: site, costs: costs() }, covered, 2)).toBeUndefined();
  expect(wants({ asItIs: site, costs: costs({ arrayPerKW: null }) }, covered, 1)).toBeUndefined();
  // Once there is a verdict nothing is asked for.
  expect(wants({ asItIs: unfuelled }, judged(1400, 380, inventedPrices))).toBeUndefined();
});

test('what the engine costs is all that an unpriced store may cost', () => {
  const engineCost = { total: 7654.3 };
  const told = 'Letting the engine go on costs 7654 over 20 years: all that the store may cost';
  expect(verdict({ engineCost, costs: costs({ store: null }) })).toContain(told);
  expect(verdict({ engineCost, costs: costs() })).not.toContain('Letting');
  expect(verdict({ engineCost, costs: null })).not.toContain('Letting');
  expect(verdict({ costs: costs({ store: null }) })).not.toContain('Letting');
});

test('fuel is told in gallons to whom it is sold in them', () => {
  expect(carryVerdict(inventedStudy(), 'us')).toContain('58 gal of fuel');
  expect(verdict()).toContain('220 L of fuel');
});
