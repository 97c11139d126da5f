import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dailyMeanDemand } from './daily-mean-demand.js';
import { runStore } from './run-store.js';
import type { StoreTechnology } from './seasonal-store.js';
import { sizeStore } from './size-store.js';

const technology = (efficiencyIn: number, efficiencyOut: number, minimumLoad = 0, loss = 0): StoreTechnology => ({
  kind: 'own',
  converterIn: { efficiency: efficiencyIn, minimumLoad, standbyW: 0 },
  standingLossPerH: loss,
  converterOut: { efficiency: efficiencyOut, minimumLoad: 0, standbyW: 0 },
});

/** An invented year: sunny middays in the light half, four engine hours on every dark day. */
function inventedYear(summerW: number, winterW: number): { surplusWh: Float64Array; demandWh: Float64Array } {
  const surplusWh = new Float64Array(8760);
  const demandWh = new Float64Array(8760);
  for (let h = 0; h < 8760; h++) {
    const season = -Math.cos((2 * Math.PI * (h / 24 + 10)) / 365);
    const hour = h % 24;
    const sun = Math.max(0, Math.sin((Math.PI * (hour - 6)) / 12));
    if (season > 0.2) surplusWh[h] = summerW * season * sun;
    if (season < -0.3 && hour >= 16 && hour < 20) demandWh[h] = winterW;
  }
  return { surplusWh, demandWh };
}

test('without minimum load and standing loss the store is the sequent peak', () => {
  const { surplusWh, demandWh } = inventedYear(2000, 1000);
  const size = sizeStore(surplusWh, demandWh, technology(0.7, 0.5), 0);
  expect(size.closes).toBe(true);
  if (!size.closes) return;
  expect(size.store.store.capacityWh).toBeCloseTo(size.losslessWh!, 6);
  // All dark days lie in one run, so the store is the whole year's draw.
  expect(size.losslessWh!).toBeCloseTo(size.demandWh / 0.5, 3);
  expect(size.store.converterOut.powerW).toBe(1000);
  expect(size.year.totals.unmetWh).toBeLessThan(1e-9 * size.demandWh);
  expect(size.year.totals.turnsPerYear).toBeCloseTo(1, 9);
});

test('the smallest converter in closes the loop and one 1 % smaller does not', () => {
  const { surplusWh, demandWh } = inventedYear(4000, 1000);
  for (const minimumLoad of [0, 0.3]) {
    const size = sizeStore(surplusWh, demandWh, technology(0.7, 0.5, minimumLoad), 0);
    if (!size.closes) throw new Error('the invented loop must close');
    const smallest = size.smallestConverterIn;
    expect(smallest.converterIn.powerW).toBeLessThan(0.7 * Math.max(...surplusWh));
    expect(runStore(surplusWh, demandWh, smallest, 0).totals.unmetWh).toBeLessThan(1e-6 * size.demandWh);
    const powerW = 0.99 * smallest.converterIn.powerW;
    const ample = { ...smallest, converterIn: { ...smallest.converterIn, powerW } };
    ample.store = { ...ample.store, capacityWh: 1e9 };
    expect(runStore(surplusWh, demandWh, ample, 0).totals.unmetWh).toBeGreaterThan(1e-6 * size.demandWh);
  }
});

test('along the trade a larger converter in comes with a smaller store, and every point retires the engine', () => {
  // Surplus and demand mixed through the year, so that power buys storage.
  const surplusWh = Float64Array.from({ length: 8760 }, (_, h) =>
    h % 100 < 8 ? 900 + (h % 7) * 50 : h % 9 === 0 ? 300 : 0,
  );
  const demandWh = Float64Array.from({ length: 8760 }, (_, h) => (h % 230 > 200 ? 140 : 0));
  const size = sizeStore(surplusWh, demandWh, technology(0.8, 0.6, 0.1, 1e-4), 0);
  if (!size.closes) throw new Error('the invented loop must close');
  expect(size.trade.length).toBeGreaterThan(3);
  for (let i = 0; i < size.trade.length; i++) {
    const { converterInW, capacityWh } = size.trade[i]!;
    if (i > 0) expect(converterInW).toBeGreaterThan(size.trade[i - 1]!.converterInW);
    if (i > 0) expect(capacityWh).toBeLessThan(size.trade[i - 1]!.capacityWh);
    const store = structuredClone(size.store);
    store.converterIn.powerW = converterInW;
    store.store.capacityWh = capacityWh;
    expect(runStore(surplusWh, demandWh, store, 0).totals.unmetWh).toBeLessThan(2e-9 * size.demandWh);
  }
});

test('a store for part of the demand is smaller and leaves just the part allowed', () => {
  const { surplusWh, demandWh } = inventedYear(4000, 1000);
  const whole = sizeStore(surplusWh, demandWh, technology(0.7, 0.5, 0.1, 1e-5), 0);
  const most = sizeStore(surplusWh, demandWh, technology(0.7, 0.5, 0.1, 1e-5), 0.1);
  if (!whole.closes || !most.closes) throw new Error('the invented loop must close');
  expect(most.store.store.capacityWh).toBeLessThan(whole.store.store.capacityWh);
  expect(most.year.totals.unmetWh / most.demandWh).toBeCloseTo(0.1, 4);
});

test('a surplus that cannot carry the demand says by how much', () => {
  const { surplusWh, demandWh } = inventedYear(300, 1000);
  const size = sizeStore(surplusWh, demandWh, technology(0.7, 0.5), 0);
  if (size.closes) throw new Error('the invented loop must not close');
  expect(size.bringsWh).toBeCloseTo(size.surplusWh * 0.35, 3);
  expect(size.shortWh).toBeCloseTo(size.demandWh - size.surplusWh * 0.35, 3);
  expect(size.year.totals.spilledWh).toBeLessThan(1e-6 * size.surplusWh);
});

test('daily means carry the same demand with a sixth of the converter out', () => {
  const { surplusWh, demandWh } = inventedYear(2000, 1000);
  const smooth = dailyMeanDemand(demandWh);
  const size = sizeStore(surplusWh, smooth, technology(0.7, 0.5), 0);
  expect(size.demandWh).toBeCloseTo(
    demandWh.reduce((a, b) => a + b, 0),
    3,
  );
  expect(size.store.converterOut.powerW).toBeCloseTo(1000 / 6, 9);
});

test('no demand needs no store, no surplus closes nothing', () => {
  const none = new Float64Array(8760);
  const some = new Float64Array(8760).fill(10);
  expect(sizeStore(some, none, technology(0.7, 0.5), 0)).toMatchObject({ closes: true, trade: [] });
  expect(sizeStore(none, some, technology(0.7, 0.5), 0)).toMatchObject({ closes: false, bringsWh: 0 });
});

test('any year of any size gives finite sizes', () => {
  const level = fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 1e7 }), fc.constant(5e-324));
  const year = fc.array(level, { minLength: 30, maxLength: 30 });
  const loss = fc.constantFrom(0, 1e-12, 1e-4, 0.9, 1 - Number.EPSILON);
  fc.assert(
    fc.property(year, year, loss, fc.constantFrom(0, 1e-6, 0.3, 1), (surplus, demand, lossPerH, allowed) => {
      const size = sizeStore(surplus, demand, technology(0.6, 0.5, 0.2, lossPerH), allowed);
      for (const value of [
        size.store.store.capacityWh,
        size.store.converterIn.powerW,
        size.store.converterOut.powerW,
        size.year.totals.unmetWh,
      ]) {
        expect(Number.isFinite(value)).toBe(true);
      }
      if (size.closes)
        expect(size.year.totals.unmetWh).toBeLessThanOrEqual(Math.max(allowed, 3e-9) * size.demandWh * 1.0001);
    }),
    { numRuns: 300, seed: 21 },
  );
});
