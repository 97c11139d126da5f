import { expect, test } from 'vitest';
import { runStore } from '../store/run-store.js';
import { carrySummary, storeFigures } from './carry-summary.js';
import {
  closingAt,
  inventedPrices,
  inventedStudy,
  judged,
  neverClosing,
  plainTechnology,
  sizeOfHalves,
} from './study.fixture.js';

// 380 kWh asked for in 10 hours through 50 %: 760 kWh of store and 38 kW; put in through 70 % in 10 hours: 108.6 kW.
test('the figures of a store that covers the year', () => {
  const size = sizeOfHalves(1400, 380);
  const figures = storeFigures(size);
  expect(figures).toMatchObject({ closes: true, met: 1, hydrogenKg: null });
  expect(figures.storeKWh).toBeCloseTo(760, 6);
  expect(figures.converterOutKW).toBeCloseTo(38, 9);
  expect(figures.converterInKW).toBeCloseTo(760 / 0.7 / 10, 1);
  const half = { ...size.store, kind: 'hydrogen', store: { ...size.store.store, capacityWh: 33_330 } } as const;
  // A kilogram of hydrogen holds 33.33 kWh.
  expect(storeFigures(size, half)).toMatchObject({ hydrogenKg: 1, storeKWh: 33.33 });
});

test('a store that does not cover the year meets its share, and where nothing is asked all of it', () => {
  expect(storeFigures(sizeOfHalves(612, 380)).met).toBeCloseTo(214.2 / 380, 9);
  expect(storeFigures(sizeOfHalves(612, 0)).met).toBe(1);
  const none = { ...sizeOfHalves(612, 380), demandWh: 0 } as ReturnType<typeof sizeOfHalves>;
  expect(storeFigures(none).met).toBe(1);
});

/** Ten days of 100 W of surplus and ten of 100 W of demand, so that the store has dates. */
function withStoreYear(change: object, ...judgement: Parameters<typeof judged>) {
  const study = inventedStudy(change, judged(...judgement));
  const surplusWh = new Float64Array(480).fill(100, 0, 240);
  const demandWh = new Float64Array(480).fill(100, 240);
  const store = { ...study.judged.judgement.store, store: { capacityWh: 1e6, standingLossPerH: 1e-4 } };
  store.converterOut = { ...store.converterOut, standbyW: 2 };
  study.judged.storeYear = runStore(surplusWh, demandWh, store, 0);
  study.arrays = [study.judged, { ...study.judged, scale: 2, ratedKW: 2.4 }];
  return study;
}

test('the document tells energies in kWh and the dates of fullest and emptiest', () => {
  const study = withStoreYear({ technologies: [{ tried: { name: 'own' }, size: sizeOfHalves(612, 380) }] }, 1400, 380);
  const summary = carrySummary(study);
  expect(summary.asItIs).toEqual({
    ...{ surplusKWh: 612, clippedKWh: 31, demandKWh: 380, generatorHours: 250, fuelLitres: 220, darkKWh: 0 },
  });
  // Fullest after ten days; 16 kWh are drawn at 200 W in 81 h, to hour 321.
  expect(summary.judged).toMatchObject({ scale: 1, ratedKW: 1.2, fullestOn: '01-10', emptiestOn: '01-14' });
  // Of 100 W 2 are standby of the converter out, and 70 % of the rest are put in; half of what does not leak comes back.
  const { standingLossKWh } = summary.judged;
  expect(summary.judged.takenKWh).toBeCloseTo(0.098 * 240, 9);
  expect(summary.judged.standbyKWh).toBeCloseTo(0.002 * 240, 9);
  expect(standingLossKWh).toBeGreaterThan(0.2);
  expect(standingLossKWh).toBeLessThan(0.3);
  expect(summary.judged.givenKWh).toBeCloseTo((0.7 * 0.098 * 240 - standingLossKWh) / 2, 9);
  expect(summary.judged.turnsPerYear).toBeCloseTo((0.7 * 0.098 * 240 - standingLossKWh) / 1000, 9);
  expect(summary.arrays.map(({ scale, ratedKW }) => [scale, ratedKW])).toEqual([
    [1, 1.2],
    [2, 2.4],
  ]);
  expect(summary.arrays[0]).toMatchObject({ storeCost: null });
  expect(summary.arrays[0]!.surplusKWh).toBeCloseTo(1400, 9);
  expect(summary.arrays[0]!.demandKWh).toBeCloseTo(380, 9);
  expect(summary.technologies).toMatchObject([{ name: 'own', closes: false, storeKWh: expect.closeTo(428.4, 6) }]);
  expect(summary.technologies[0]!.roundTrip).toBeCloseTo(0.35, 12);
  expect(summary).toMatchObject({ site: 'Invented', verdict: 'no prices', cost: null, yearsSimulated: 1 });
  expect(summary.sentence).toMatch(/^The store covers the year; .*220 L of fuel/);
  expect(summary.cautions.map(({ code }) => code)).toEqual(['one-year']);
});

test('what covers the year is told with its scale, or how far was looked, or not at all', () => {
  const closing = (of: ReturnType<typeof closingAt> | null) =>
    carrySummary(withStoreYear({ closing: of }, 1400, 380)).closing;
  expect(closing(null)).toBeNull();
  expect(closing(closingAt(2, false))).toEqual({
    ...{ closes: true, scale: 2, scaleWithAllowance: 2.4, largestTried: null, needsStore: false },
  });
  expect(closing(neverClosing(16))).toEqual({
    ...{ closes: false, scale: null, scaleWithAllowance: null, largestTried: 16, needsStore: null },
  });
});

test('the technology is told with how hydrogen is kept, and costs with the store they belong to', () => {
  const own = carrySummary(withStoreYear({}, 1400, 380, inventedPrices));
  expect(own.technology).toEqual({ ...plainTechnology, keeping: null, chain: null });
  expect(own.arrays[0]!.storeCost).toBe(own.cost!.store!.total);
  const settings = { store: { kind: 'hydrogen', keeping: 'unpressed' }, largestArray: 16 };
  expect(carrySummary(withStoreYear({ settings }, 1400, 380)).technology.keeping).toBe('unpressed');
});
