import { expect, test } from 'vitest';
import { engineLifeCycle } from '../cost/engine-cost.js';
import { storeLifeCycle } from '../cost/store-cost.js';
import { hydrogenRange, hydrogenTechnology } from '../store/hydrogen.js';
import type { StoreTechnology } from '../store/seasonal-store.js';
import { sizeStore } from '../store/size-store.js';
import { type JudgementPrices, judgeStore } from './judge-store.js';
import { verdictText } from './verdict-text.js';

// Every number in this file is invented.
const technology: StoreTechnology = {
  kind: 'own',
  converterIn: { efficiency: 0.7, minimumLoad: 0, standbyW: 0 },
  standingLossPerH: 0,
  converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
};
const engine = { fuelLitresPerYear: 220, hoursPerYear: 250, lifeH: 2000 };
const prices: JudgementPrices = {
  engine: { fuelPerL: 1.6, fuelEscalation: 0.02, servicePerH: 0.4, replacement: 1800, firstCost: 0 },
  store: {
    converterInPerKW: 2500,
    storePerKWh: 20,
    converterOutPerKW: 3000,
    upkeepPerYear: 40,
    otherFirstCost: 500,
    converterInYears: 12,
    storeYears: 25,
    converterOutYears: 10,
  },
  terms: { years: 20, discountRate: 0.03 },
};

/** Surplus in the first half of the year, demand in the second, sums in kWh. */
function halves(surplusKWh: number, demandKWh: number) {
  const surplusWh = new Float64Array(8760).fill((surplusKWh * 1000) / 4380, 0, 4380);
  const demandWh = new Float64Array(8760).fill((demandKWh * 1000) / 4380, 4380);
  return { surplusWh, demandWh };
}
const sizeOf = (surplusKWh: number, demandKWh: number, chosen = technology) => {
  const { surplusWh, demandWh } = halves(surplusKWh, demandKWh);
  return sizeStore(surplusWh, demandWh, chosen, 0);
};

test('a store that does not cover the year is not worth it, and the sentence shows the sum', () => {
  const judgement = judgeStore(sizeOf(612, 380), engine, prices);
  expect(verdictText(judgement, null, 'metric')).toBe(
    "Not worth it: the store does not cover the year; this array's surplus is 612 kWh, 35 % round trip brings 214 kWh of the " +
      '380 kWh needed.',
  );
  expect(judgement.deciding[0].value).toBeCloseTo(214.2, 6);
  expect(judgement.deciding[0].against).toBeCloseTo(380, 6);
});

test('without prices the verdict has kWh, litres and hours only', () => {
  const judgement = judgeStore(sizeOf(1400, 380), engine, null);
  expect(judgement).toMatchObject({ verdict: 'no prices', cost: null });
  expect(judgement.deciding.map(({ value }) => Math.round(value))).toEqual([760, 220]);
  expect(verdictText(judgement, null, 'metric')).toBe(
    'The store covers the year; whether it is worth it hangs on prices not given. A store of 760 kWh, filled with 0.25 kW and ' +
      'emptied with 0.087 kW, is turned over once a year and saves 220 L of fuel and 250 engine hours a year.',
  );
  expect(verdictText(judgement, null, 'us')).toContain('58 gal of fuel');
});

test('at a break-even price both life-cycle costs are the same', () => {
  const { cost, store } = judgeStore(sizeOf(1400, 380), engine, prices);
  if (cost?.engine == null || cost.store == null) throw new Error('both costs must be there');
  const storeThere = storeLifeCycle(store, prices.store, Math.max(0, cost.breakEvenStorePerKWh!), prices.terms);
  expect(cost.breakEvenStorePerKWh).toBeGreaterThan(0);
  expect(storeThere.total).toBeCloseTo(cost.engine.total, 6);
  const engineThere = engineLifeCycle(engine, prices.engine, cost.breakEvenFuelPerL!, prices.terms);
  expect(engineThere.total).toBeCloseTo(cost.store.total, 6);
});

test('the cheaper choice is on the side of its break-even price', () => {
  const dear = judgeStore(sizeOf(1400, 380), engine, prices);
  expect(dear.verdict).toBe('not worth it');
  expect(dear.cost!.breakEvenStorePerKWh!).toBeLessThan(20);
  expect(dear.cost!.breakEvenFuelPerL!).toBeGreaterThan(1.6);
  const cheap = { ...prices, store: { ...prices.store, storePerKWh: 0.9 * dear.cost!.breakEvenStorePerKWh! } };
  const judged = judgeStore(sizeOf(1400, 380), engine, cheap);
  expect(judged.verdict).toBe('worth it');
  expect(verdictText(judged, null, 'metric')).toMatch(
    /^Worth it: over 20 years the store costs \d+ and the engine \d+/,
  );
  expect(verdictText(dear, null, 'metric')).toMatch(/^Not worth it: the store covers the year, but over 20 years/);
});

test('one price missing leaves the verdict open but gives the break-even price for it', () => {
  const unknownStore = { ...prices, store: { ...prices.store, storePerKWh: null } };
  const judgement = judgeStore(sizeOf(1400, 380), engine, unknownStore);
  expect(judgement.verdict).toBe('no prices');
  expect(judgement.cost!.store).toBeNull();
  expect(judgement.cost!.breakEvenFuelPerL).toBeNull();
  expect(judgement.cost!.breakEvenStorePerKWh).toBeGreaterThan(0);
  expect(judgement.deciding[0]).toMatchObject({ what: 'break-even price of the store', against: null });
  expect(verdictText(judgement, null, 'metric')).toContain('Store and engine cost the same at');
});

test('the store judged is the cheapest between smallest converter and smallest store', () => {
  const surplusWh = Float64Array.from({ length: 8760 }, (_, h) => (h % 100 < 8 ? 900 : h % 9 === 0 ? 300 : 0));
  const demandWh = Float64Array.from({ length: 8760 }, (_, h) => (h % 230 > 200 ? 100 : 0));
  const size = sizeStore(surplusWh, demandWh, technology, 0);
  if (!size.closes) throw new Error('the loop must close');
  const withPrices = (storePerKWh: number) =>
    judgeStore(size, engine, { ...prices, store: { ...prices.store, storePerKWh } }).store;
  expect(withPrices(100_000).store.capacityWh).toBeCloseTo(size.store.store.capacityWh, 6);
  expect(withPrices(0).converterIn.powerW).toBeCloseTo(size.smallestConverterIn.converterIn.powerW, 6);
});

test('a hydrogen verdict carries the caution, and kilograms where the store covers the year', () => {
  const off = { minimumLoad: 0, standbyW: 0 };
  const hydrogen = hydrogenTechnology(hydrogenRange('200 bar').typical, off, off);
  expect(verdictText(judgeStore(sizeOf(612, 380, hydrogen), engine, null), null, 'metric')).toMatch(/4 to 75 %/);
  // 100 kWh from a fuel cell of 47.5 % need 210.5 kWh of lower heat, 6.3 kg.
  expect(verdictText(judgeStore(sizeOf(1400, 100, hydrogen), engine, null), null, 'metric')).toContain('(6.3 kg of');
});

test('an engine that gives nothing has nothing to be retired from', () => {
  const judgement = judgeStore(sizeOf(612, 0), { ...engine, fuelLitresPerYear: 0, hoursPerYear: 0 }, prices);
  expect(judgement.verdict).toBe('nothing to retire');
  expect(verdictText(judgement, null, 'metric')).toMatch(/^Nothing to retire/);
});

test('the array that would cover the year is named with its allowance', () => {
  const judgement = judgeStore(sizeOf(612, 380), engine, null);
  const size = sizeOf(1400, 380);
  if (!size.closes) throw new Error('the loop must close');
  const closing = {
    closes: true,
    scale: 1.75,
    scaleWithAllowance: 2.1,
    size,
    needsStore: true,
    yearsSimulated: 9,
  } as const;
  expect(verdictText(judgement, closing, 'metric')).toMatch(
    / An array 1\.75 times this one would cover it \(2\.1 times with the usual allowance for unknown losses\)\.$/,
  );
});

test('prices and uses out of range are refused by name', () => {
  const size = sizeOf(1400, 380);
  const negative = { ...prices, engine: { ...prices.engine, servicePerH: -1 } };
  expect(() => judgeStore(size, engine, negative)).toThrow('servicePerH must be 0 or more, got -1');
  expect(() => judgeStore(size, { ...engine, hoursPerYear: 9000 }, prices)).toThrow('hoursPerYear must be 0 to 8784');
  const noLife = { ...prices, store: { ...prices.store, storeYears: 0 } };
  expect(() => judgeStore(size, engine, noLife)).toThrow('everyYears must be 0.001 or more, got 0');
  expect(() => judgeStore(size, { ...engine, fuelLitresPerYear: Number.NaN }, null)).toThrow(RangeError);
});

test('an engine whose fuel does not count has no break-even price of fuel', () => {
  const { cost } = judgeStore(sizeOf(1400, 380), { ...engine, fuelLitresPerYear: 0 }, prices);
  expect(cost!.breakEvenFuelPerL).toBeNull();
  expect(cost!.breakEvenStorePerKWh).not.toBeNull();
});
